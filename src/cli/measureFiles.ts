import { availableParallelism } from 'node:os';
import { type FileOutcome, type MeasureTask, measureFile } from './measureFile.ts';
import type { ProgressLine } from './progress/progressLine.ts';
import { measureWorkerFile } from './reading/threadFiles.ts';

/** A thread takes as long to start as two small captures take. */
const LEAST_FILES = 4;
/** Each holds a capture of its own. */
const MOST_THREADS = 8;

/**
 * Measures several files: few one after the other, many on the machine's cores.
 *
 * @param progress - told each file before its outcome is waited for.
 * @returns outcomes in the order of the tasks.
 */
export async function* measureFiles(
  tasks: readonly MeasureTask[],
  progress: ProgressLine,
): AsyncGenerator<FileOutcome, void, undefined> {
  const threads = Math.min(MOST_THREADS, availableParallelism());
  if (tasks.length < LEAST_FILES || threads < 2) {
    for (const { found, options } of tasks) {
      progress.begin(found.file);
      yield await measureFile(found, options, { progress });
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
    const outcomes = tasks.map((task): Promise<FileOutcome> => {
      // What is wrong with a name needs no thread.
      if (task.found.error !== undefined) return measureFile(task.found, task.options);
      const outcome: Promise<FileOutcome> = pool.run(task);
      // One that fails before its turn waits for it.
      outcome.catch(() => {});
      return outcome;
    });
    for (const [i, outcome] of outcomes.entries()) {
      progress.begin(tasks[i]!.found.file);
      yield await outcome;
    }
  } finally {
    await pool.destroy();
  }
}
