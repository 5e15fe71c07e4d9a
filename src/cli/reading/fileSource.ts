import { createHash } from 'node:crypto';
import { readSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { type ByteSource, type MeasureError, wordedError } from '../../entry/reading.ts';

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
  return wordedError('file.unreadable', 'The file grew shorter while it was read.', {
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
