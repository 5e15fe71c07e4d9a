import { stat } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import type { Command } from 'commander';
import { planKeys } from '../../entry/grammar.ts';
import { failureLine, MeasureError, wordedError } from '../../entry/measuring.ts';
import { type LookedInto, lookedInto, planText } from '../../entry/plans.ts';
import { exitCodes } from '../failures.ts';
import { findCaptures } from '../findCaptures.ts';
import { failedResult } from '../measureFile.ts';
import { measureFiles } from '../measureFiles.ts';
import { progressLine } from '../progressLine.ts';
import { writeWhole } from '../writing/writeOutput.ts';
import { type NamedPlan, planInFile, planOfPairs, type SweepFlags } from './namedPlan.ts';
import { type BenchFlags, runBench } from './runBench.ts';

/** The flags of `bench` as commander hands them over. */
export type BenchCommandFlags = BenchFlags &
  SweepFlags & { readonly init?: string; readonly force?: boolean };

/** What a plan states itself, so that these belong to pairs alone. */
const SWEEP_FLAGS = ['claim', 'label', ...planKeys.map(({ key }) => key), 'rule', 'earlier'];

/** What `bench` does. */
export async function benchCaptures(
  words: readonly string[],
  flags: BenchCommandFlags,
  command: Command,
): Promise<void> {
  const refuse = (message: string): never =>
    command.error(`error: ${message}`, { exitCode: exitCodes.usage });
  const subject = flags.init ?? words.find((word) => !word.includes('=')) ?? 'load=file';
  try {
    if (flags.init !== undefined) {
      if (words.length > 0) refuse('--init takes a folder and nothing else');
      const { path, count } = await writePlan(flags.init, flags.force ?? false);
      const captures = count === 1 ? '1 capture' : `${count} captures`;
      process.stdout.write(`${path}: ${captures}. Fill in what you know, then: sineassay bench ${path}\n`);
      return;
    }
    await runBench(await planNamed(words, flags, refuse), flags);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    process.stderr.write(`${failureLine(failedResult(subject, error))}\n`);
    process.exitCode = exitCodes.usage;
  }
}

/** A plan's file, or pairs: never both. */
async function planNamed(
  words: readonly string[],
  flags: BenchCommandFlags,
  refuse: (message: string) => never,
): Promise<NamedPlan> {
  const [first] = words;
  if (first === undefined) refuse('name a plan, or captures as load=file, such as 300W=heater.csv');
  const own = Object.fromEntries(
    SWEEP_FLAGS.flatMap((key) => (flags[key] === undefined ? [] : [[key, flags[key]]])),
  ) as SweepFlags;
  if (words.every((word) => /^[^=]+=./.test(word))) return planOfPairs(words, own);
  if (words.length > 1) refuse('name one plan, or nothing but captures as load=file');
  const [flag] = Object.keys(own);
  if (flag !== undefined) refuse(`--${flag} goes with load=file; a plan states it itself`);
  return planInFile(first);
}

/**
 * Writes plan.yaml into a folder, filled with the captures found there.
 *
 * @param force - write over a plan that is there.
 * @returns the plan's path and how many captures it names.
 * @throws MeasureError `plan.exists`; where the folder holds no capture; where it can't be written.
 */
async function writePlan(
  folder: string,
  force: boolean,
): Promise<{ readonly path: string; readonly count: number }> {
  const path = join(folder, 'plan.yaml');
  const found = await findCaptures([folder]);
  for (const { error } of found) if (error !== undefined) throw error;
  if (!force && (await stat(path).catch(() => null)) !== null) {
    throw wordedError('plan.exists', 'There is a plan in this folder already.', {
      expected: 'a folder without plan.yaml',
      advice: '--force writes over it; what was filled in is lost then',
    });
  }
  const nameOf = (file: string): string => relative(folder, file).split(sep).join('/');
  const files = found.map(({ file }) => nameOf(file));
  const looked = new Map<string, LookedInto>();
  const progress = progressLine(found.length, {});
  // What can't be read is named in the plan all the same: bench says what is wrong with it.
  for await (const outcome of measureFiles(
    found.map((one) => ({ found: one, options: {} })),
    progress,
  )) {
    if ('failed' in outcome) continue;
    const { result } = outcome.assays[0]!;
    looked.set(nameOf(result.file), lookedInto(result));
  }
  progress.clear();
  await writeWhole(path, planText(files, looked));
  return { path, count: files.length };
}
