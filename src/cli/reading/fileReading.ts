import { availableParallelism } from 'node:os';

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
