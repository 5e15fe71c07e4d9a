import { availableParallelism } from 'node:os';
import type { Found } from './findCaptures.ts';
import { type FileOutcome, type MeasureFileOptions, measureFile } from './measureFile.ts';
import type { MeasureTask } from './reading/measureWorker.ts';

/** A thread takes as long to start as two small captures take. */
const LEAST_FILES = 4;
/** Each holds a capture of its own. */
const MOST_THREADS = 8;

/**
 * Measures several files: few one after the other, many on the machine's cores.
 *
 * @param threads - at most.
 * @returns outcomes in the order of the files.
 */
export async function* measureFiles(
  found: readonly Found[],
  options: MeasureFileOptions,
  threads: number = Math.min(MOST_THREADS, availableParallelism()),
): AsyncGenerator<FileOutcome> {
  if (found.length < LEAST_FILES || threads < 2) {
    for (const file of found) yield await measureFile(file, options);
    return;
  }
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: new URL('./reading/measureWorker.js', import.meta.url).href,
    minThreads: 1,
    maxThreads: Math.min(threads, found.length),
    isolateWorkers: false,
  });
  try {
    const outcomes = found.map((file) =>
      // What is wrong with a name needs no thread.
      file.error === undefined
        ? (pool.run({ found: file, options } satisfies MeasureTask) as Promise<FileOutcome>)
        : measureFile(file, options),
    );
    // One that fails before its turn is awaited waits for it.
    for (const outcome of outcomes) outcome.catch(() => {});
    yield* outcomes;
  } finally {
    await pool.destroy();
  }
}
