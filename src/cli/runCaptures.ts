import { once } from 'node:events';
import type { Command } from 'commander';
import {
  type Assay,
  allLines,
  answerLines,
  budgetLines,
  type FailedResult,
  failureLine,
  jsonText,
  MeasureError,
  type MeasureResult,
  windowLines,
  worded,
} from '../entry/measuring.ts';
import { exitCodes } from './failures.ts';
import type { Found } from './findCaptures.ts';
import { type FileOutcome, failedResult } from './measureFile.ts';
import { measureFileOptions, measureFiles } from './measureFiles.ts';
import type { MeasureFlags } from './measureOptions.ts';
import { progressLine } from './progressLine.ts';
import type { WriteSheet } from './report/sheetWriter.ts';

/**
 * Measures captures, prints what was found, and sets the exit code.
 *
 * @param writeSheet - writes the sheet of a result and says where; absent: none is wanted.
 * @returns the results, those that failed among them; none where they were written as lines.
 */
export async function runCaptures(
  found: readonly Found[],
  flags: MeasureFlags,
  command: Command,
  writeSheet?: WriteSheet,
): Promise<readonly (MeasureResult | FailedResult)[]> {
  const options = await measureFileOptions(flags, command);
  // As lines they are gone once they are written, however many.
  const results: (MeasureResult | FailedResult)[] = [];
  let [failures, broken] = [0, 0];
  let answers = 0;
  const progress = progressLine(found.length, { quiet: flags.quiet });
  const keep = async (result: MeasureResult | FailedResult): Promise<void> => {
    if (!holds(result)) broken++;
    if (!flags.jsonLines) results.push(result);
    else if (!process.stdout.write(`${jsonText(result)}\n`)) await once(process.stdout, 'drain');
  };
  const fail = (failed: FailedResult): void => {
    failures++;
    progress.clear();
    process.stderr.write(`${failureLine(failed)}\n`);
  };
  /** Channels of a capture that was measured in others. */
  const failMore = async ({ unmeasured = [] }: FileOutcome): Promise<void> => {
    for (const one of unmeasured) {
      await keep(one);
      fail(one);
    }
  };
  const tasks = found.map((one) => ({ found: one, options }));
  for await (const outcome of measureFiles(tasks, progress)) {
    if ('failed' in outcome) {
      await keep(outcome.failed);
      fail(outcome.failed);
      await failMore(outcome);
      continue;
    }
    for (const assay of outcome.assays) {
      const result = worded(assay.result);
      await keep(result);
      let sheetPath: string | undefined;
      try {
        sheetPath = await writeSheet?.(assay, outcome.options);
      } catch (problem) {
        // What was measured still stands.
        if (!(problem instanceof MeasureError)) throw problem;
        fail(failedResult(assay.result.file, problem));
      }
      progress.clear();
      if (!flags.json && !flags.jsonLines)
        printAnswer(result, assay.budgets, flags, sheetPath, answers++ > 0);
    }
    await failMore(outcome);
  }
  if (flags.json) {
    process.stdout.write(`${jsonText({ schema: 'sineassay/measure@1', results }, 2)}\n`);
  }
  process.exitCode = failures > 0 ? exitCodes.usage : broken > 0 ? exitCodes.claim : exitCodes.ok;
  return results;
}

function printAnswer(
  result: MeasureResult,
  budgets: Assay['budgets'],
  flags: MeasureFlags,
  sheetPath: string | undefined,
  spaced: boolean,
): void {
  const width = Math.min(100, process.stdout.columns ?? 80);
  const options = { width, ...(sheetPath === undefined ? {} : { sheetPath }) };
  const lines = flags.all ? allLines(result, options) : answerLines(result, options);
  const shown = [
    ...lines,
    ...(flags.perWindow ? windowLines(result) : []),
    ...(flags.budget ? budgetLines(budgets) : []),
  ];
  process.stdout.write(`${spaced ? '\n' : ''}${shown.join('\n')}\n`);
}

/** Every claim of a result does, or probably does. */
function holds(result: MeasureResult | FailedResult): boolean {
  return (
    'error' in result ||
    result.claims.every(({ outcome }) => outcome === 'pass' || outcome === 'conditional pass')
  );
}
