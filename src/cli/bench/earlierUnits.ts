import { type BenchUnit, readEarlier } from '../../entry/benching.ts';
import { type FailedResult, MeasureError } from '../../entry/measuring.ts';
import { failedResult } from '../measureFile.ts';
import { readText } from '../reading/readText.ts';
import { pathFrom } from './pathFrom.ts';

/** The units of earlier documents; a document that can't be read is a failure beside the others. */
export async function earlierUnits(
  files: readonly string[],
  folder: string,
): Promise<{ readonly units: readonly BenchUnit[]; readonly failures: readonly FailedResult[] }> {
  const units: BenchUnit[] = [];
  const failures: FailedResult[] = [];
  for (const file of files) {
    const path = pathFrom(folder, file);
    try {
      units.push(...readEarlier(await readText(path), path));
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      failures.push(failedResult(path, error));
    }
  }
  return { units, failures };
}
