import { availableParallelism } from 'node:os';
import type { Found } from './findCaptures.ts';
import { type FileOutcome, type MeasureFileOptions, measureFile } from './measureFile.ts';
import type { MeasureTask } from './reading/measureWorker.ts';
import { measureWorkerFile } from './reading/threadFiles.ts';

/** A thread takes as long to start as two small captures take. */
const LEAST_FILES = 4;
/** Each holds a capture of its own. */
const MOST_THREADS = 8;

/**
 * Measures several files: few one after the other, many on the machine's cores.
 *
 * @param waitsFor - told each file before its outcome is waited for.
 * @returns outcomes in the order of the files.
 */
export async function* measureFiles(
  found: readonly Found[],
  options: MeasureFileOptions,
  waitsFor: (file: string) => void = () => {},
): AsyncGenerator<FileOutcome> {
  const threads = Math.min(MOST_THREADS, availableParallelism());
  if (found.length < LEAST_FILES || threads < 2) {
    for (const one of found) {
      waitsFor(one.file);
      yield await measureFile(one, options);
    }
    return;
  }
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: measureWorkerFile.href,
    minThreads: 1,
    maxThreads: threads,
    isolateWorkers: false,
  });
  try {
    const outcomes = found.map((one): Promise<FileOutcome> => {
      // What is wrong with a name needs no thread.
      if (one.error !== undefined) return measureFile(one, options);
      const outcome: Promise<FileOutcome> = pool.run({ found: one, options } satisfies MeasureTask);
      // One that fails before its turn waits for it.
      outcome.catch(() => {});
      return outcome;
    });
    for (const [i, outcome] of outcomes.entries()) {
      waitsFor(found[i]!.file);
      yield await outcome;
    }
  } finally {
    await pool.destroy();
  }
}
