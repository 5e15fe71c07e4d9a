import { createHash } from 'node:crypto';
import { readSync, type Stats } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { type ByteSource, MeasureError } from '../../entry/reading.ts';
import { unreadable } from '../failures.ts';

/** How a file is read, by its length in bytes. */
export interface FileReading {
  /** A smaller file is read whole, and pays for none of what a large one takes. */
  readonly inChunksFrom: number;
  /** A worker takes some 30 ms to start, in which one thread reads as much as this. */
  readonly sharedFrom: number;
  /** Threads beside this one, at most. Each takes some memory of its own. */
  readonly workers: number;
  /** Told now and then how far a large file is read, from 0 to 1. */
  readonly readSoFar: (share: number) => void;
}

export const FILE_READING: FileReading = {
  inChunksFrom: 4 << 20,
  sharedFrom: 24 << 20,
  workers: Math.min(3, availableParallelism() - 1),
  readSoFar: () => {},
};

/**
 * An open file as a source of bytes. Reading stops the thread; it is of use where there is nothing else to do.
 *
 * @param byteLength - of the file as it was opened.
 */
export function fileSource(descriptor: number, byteLength: number): ByteSource {
  return {
    byteLength,
    read: (from, into) => {
      const wanted = Math.min(into.length, byteLength - from);
      let filled = 0;
      while (filled < wanted) {
        const count = readSync(descriptor, into, filled, wanted - filled, from + filled);
        if (count === 0) throw shrunk();
        filled += count;
      }
      return filled;
    },
  };
}

function shrunk(): MeasureError {
  return new MeasureError('file.unreadable', 'The file grew shorter while it was read.', {
    expected: 'a file that nothing else writes to',
    received: 'fewer bytes than it had when it was opened',
    advice: 'wait until it is saved or copied whole, and measure it again',
  });
}

const BLOCK_LENGTH = 1 << 20;

/** The SHA-256 of a file, in hexadecimal digits. */
export function digestOf({ byteLength, read }: ByteSource): string {
  const hash = createHash('sha256');
  const block = new Uint8Array(BLOCK_LENGTH);
  for (let from = 0; from < byteLength; from += BLOCK_LENGTH) {
    hash.update(block.subarray(0, read(from, block)));
  }
  return hash.digest('hex');
}

/**
 * What the system knows of a file, before it is opened: a pipe would be waited for, and a device may never end.
 *
 * @throws MeasureError `file.unreadable` where it is not there or a folder, `file.notRegular` where it is neither.
 */
export async function regularFile(path: string): Promise<Stats> {
  const stats = await stat(path).catch((error: unknown) => {
    throw unreadable(error);
  });
  if (stats.isDirectory()) throw unreadable('a folder of that name');
  if (!stats.isFile()) throw notRegular(stats);
  return stats;
}

function notRegular(stats: Stats): MeasureError {
  const what = oddKind(stats);
  return new MeasureError('file.notRegular', `This is ${what}, and no file.`, {
    expected: 'a file on a disk',
    received: what,
    advice: 'Save what it gives into a file, and name that',
  });
}

/** What stands under a name where no file and no folder does. */
export function oddKind(stats: Stats): string {
  if (stats.isFIFO()) return 'a pipe';
  if (stats.isSocket()) return 'a socket';
  return 'a device';
}

/** More than any file of words or results has, less than what fills the memory. */
const MOST_BYTES = 128 * 2 ** 20;

/**
 * The bytes of a file of text, such as a plan or a sheet.
 *
 * @throws MeasureError `file.unreadable`, `file.notRegular`, `file.tooLarge`.
 */
export async function readBytes(path: string): Promise<Buffer> {
  const { size } = await regularFile(path);
  if (size > MOST_BYTES) {
    throw new MeasureError('file.tooLarge', 'The file is too large to be a plan, a sheet or a result.', {
      expected: `at most ${Math.floor(MOST_BYTES / 1e6)} MB`,
      received: `${Math.ceil(size / 1e6)} MB`,
    });
  }
  return await readFile(path).catch((error: unknown) => {
    throw unreadable(error);
  });
}

/** The same as text. */
export async function readText(path: string): Promise<string> {
  return (await readBytes(path)).toString('utf8');
}

/** SHA-256 of a text's UTF-8 bytes, or of bytes, lower-case hexadecimal. */
export function digest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}
