import type { FailedResult, MeasureDocument, MeasureResult } from '../../src/assay/measureDocument.ts';
import type { CommandRun } from './runCommand.ts';

/** The results of a run with --json, none of them an error. */
export function measuredResults({ stdout }: CommandRun): readonly MeasureResult[] {
  return (JSON.parse(stdout) as MeasureDocument).results.map((result) => {
    if (!isMeasured(result)) throw new Error(`${result.file}: ${result.error.message}`);
    return result;
  });
}

function isMeasured(result: MeasureResult | FailedResult): result is MeasureResult {
  return !('error' in result);
}
