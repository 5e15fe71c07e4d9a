import { availableParallelism } from 'node:os';
import type { Command } from 'commander';
import { toldBy } from '../entry/grammar.ts';
import { type AssayOptions, completeOptions, failureLine, MeasureError } from '../entry/measuring.ts';
import { exitCodes, unreadable } from './failures.ts';
import type { Found } from './findCaptures.ts';
import {
  type FileOutcome,
  failedResult,
  type MeasureFileOptions,
  type MeasureTask,
  measureFile,
} from './measureFile.ts';
import type { MeasureFlags } from './measureOptions.ts';
import type { ProgressLine } from './progressLine.ts';
import { readText } from './reading/readText.ts';
import { measureWorkerFile } from './reading/readThreads.ts';

/** A thread takes as long to start as two small captures take. */
const LEAST_FILES = 4;
/** Captures begun for each thread before their turn: one long capture holds up few others. */
const AHEAD = 8;
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
    const begin = (task: MeasureTask): Promise<FileOutcome> => {
      // What is wrong with a name needs no thread.
      if (task.found.error !== undefined) return measureFile(task.found, task.options);
      const outcome: Promise<FileOutcome> = pool.run(task);
      // One that fails before its turn waits for it.
      outcome.catch(() => {});
      return outcome;
    };
    // Begun and not yet taken: enough for every thread, and no more of a long run than of a short one.
    const ahead: Promise<FileOutcome>[] = [];
    for (const [i, { found }] of tasks.entries()) {
      while (ahead.length < AHEAD * threads && i + ahead.length < tasks.length)
        ahead.push(begin(tasks[i + ahead.length]!));
      progress.begin(found.file);
      yield await ahead.shift()!;
    }
  } finally {
    await pool.destroy();
  }
}

/**
 * The flags in the terms of the core.
 *
 * @throws CommanderError where the instrument file can't be read.
 */
export async function measureFileOptions(flags: MeasureFlags, command: Command): Promise<MeasureFileOptions> {
  const { instrument: file, ...others } = flags;
  const instrument = file === undefined ? undefined : await instrumentIn(file, command);
  return completeOptions(toldBy('flag', { ...others, instrument }));
}

/** An instrument file is one of the words: where it is wrong, nothing is measured. */
async function instrumentIn(
  file: string,
  command: Command,
): Promise<NonNullable<AssayOptions['instrument']>> {
  // It alone needs YAML, which takes longer to load than a small capture to measure.
  const { readInstrument } = await import('../entry/plans.ts');
  try {
    return readInstrument(await readText(file));
  } catch (error) {
    const known = error instanceof MeasureError ? error : unreadable(error);
    return command.error(
      `error: option '--instrument <file>' argument '${file}' is invalid. ${failureLine(failedResult(file, known))}`,
      { exitCode: exitCodes.usage },
    );
  }
}

/** A meter's reading belongs to one moment and one outlet. */
export function refuseMeterForMany(found: readonly Found[], flags: MeasureFlags, command: Command): void {
  if (flags.meterV === undefined) return;
  const refuse = (message: string): never => command.error(message, { exitCode: exitCodes.usage });
  if (found.length > 1) {
    refuse(
      'error: --meter is a reading for one capture: measure that one, then use the factor it prints for the others',
    );
  }
  if (flags.voltage?.toLowerCase() === 'all') {
    refuse('error: --meter is a reading of one channel: name that channel with --voltage');
  }
}
