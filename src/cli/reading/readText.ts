import { createHash } from 'node:crypto';
import type { Stats } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import { type MeasureError, wordedError } from '../../entry/grammar.ts';
import { unreadable } from '../failures.ts';

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
  return wordedError('file.notRegular', `This is ${what}, and no file.`, {
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
    throw wordedError('file.tooLarge', 'The file is too large to be a plan, a sheet or a result.', {
      expected: `at most ${Math.floor(MOST_BYTES / 1e6)} MB`,
      received: `${Math.ceil(size / 1e6)} MB`,
    });
  }
  return await readSized(path, size);
}

/**
 * All bytes of a file, as many as the system says that it has: of what has more, or says nothing of it, no end is known.
 *
 * @param size - bytes, as `regularFile` tells it.
 * @throws MeasureError `file.unreadable`.
 */
export async function readSized(path: string, size: number): Promise<Buffer> {
  const rethrow = (error: unknown): never => {
    throw unreadable(error);
  };
  const file = await open(path).catch(rethrow);
  try {
    const bytes = Buffer.allocUnsafe(size + 1);
    let filled = 0;
    while (filled <= size) {
      const { bytesRead } = await file.read(bytes, filled, size + 1 - filled, filled).catch(rethrow);
      if (bytesRead === 0) return bytes.subarray(0, filled);
      filled += bytesRead;
    }
  } finally {
    await file.close();
  }
  throw wordedError('file.unreadable', 'The file holds more than the system says of it.', {
    expected: `a file on a disk of ${size} bytes, that nothing else writes to`,
    received: 'more bytes than that',
    advice: 'wait until it is saved or copied whole; save what a system gives into a file, and name that',
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
