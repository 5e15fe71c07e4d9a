import {
  type Assay,
  allLines,
  answerLines,
  type FailedResult,
  failureLine,
  type MeasureResult,
} from '../index.ts';
import { exitCodes } from './exitCodes.ts';
import { findCaptures } from './findCaptures.ts';
import { measureFile } from './measureFile.ts';
import { type MeasureFlags, measureFileOptions } from './measureOptions.ts';

/**
 * Measures the captures named, prints what was found, and sets the exit code.
 *
 * @param sheetFor - writes the sheet of a result and says where; null where none is wanted.
 */
export async function runCaptures(
  named: readonly string[],
  flags: MeasureFlags,
  sheetFor: ((assay: Assay) => Promise<string>) | null,
  prepare: (files: readonly string[]) => void = () => {},
): Promise<void> {
  const found = await findCaptures(named);
  prepare(found.map(({ file }) => file));
  const options = measureFileOptions(flags);
  const results: (MeasureResult | FailedResult)[] = [];
  for (const capture of found) {
    const outcome = await measureFile(capture, options);
    if ('failed' in outcome) {
      results.push(outcome.failed);
      process.stderr.write(`${failureLine(outcome.failed)}\n`);
      continue;
    }
    for (const assay of outcome.assays) {
      const sheetPath = sheetFor === null ? undefined : await sheetFor(assay);
      if (!flags.json) printAnswer(assay.result, flags, sheetPath, results.length > 0);
      results.push(assay.result);
    }
  }
  if (flags.json) {
    process.stdout.write(`${JSON.stringify({ schema: 'sineassay/measure@1', results }, null, 2)}\n`);
  }
  process.exitCode = exitCodeOf(results);
}

function printAnswer(
  result: MeasureResult,
  flags: MeasureFlags,
  sheetPath: string | undefined,
  spaced: boolean,
): void {
  const width = Math.min(100, process.stdout.columns ?? 80);
  const options = { width, ...(sheetPath === undefined ? {} : { sheetPath }) };
  const lines = flags.all ? allLines(result, options) : answerLines(result, options);
  process.stdout.write(`${spaced ? '\n' : ''}${lines.join('\n')}\n`);
}

function exitCodeOf(results: readonly (MeasureResult | FailedResult)[]): number {
  if (results.some((result) => 'error' in result)) return exitCodes.usage;
  const holds = results.every(
    (result) =>
      'error' in result ||
      result.claims.every(({ outcome }) => outcome === 'pass' || outcome === 'conditional pass'),
  );
  return holds ? exitCodes.ok : exitCodes.claim;
}
