import { type BenchUnit, readEarlier } from '../../entry/benching.ts';
import { publishedNames, publishedUnit } from '../../entry/evidence.ts';
import { type FailedResult, MeasureError } from '../../entry/measuring.ts';
import { digest } from '../digest.ts';
import { failedResult } from '../measureFile.ts';
import { readText } from '../reading/readText.ts';
import { pathFrom } from './pathFrom.ts';

/** The units of earlier documents; a document that can't be read is a failure beside the others. */
export async function earlierUnits(
  files: readonly string[],
  folder: string,
): Promise<{ readonly units: readonly BenchUnit[]; readonly failures: readonly FailedResult[] }> {
  const failures: FailedResult[] = [];
  const fail = (path: string, error: unknown): readonly [] => {
    if (!(error instanceof MeasureError)) throw error;
    failures.push(failedResult(path, error));
    return [];
  };
  const read = [];
  for (const file of files) {
    const path = pathFrom(folder, file);
    try {
      const text = await readText(path);
      read.push({ file: path, text, sha256: digest(text) });
    } catch (error) {
      fail(path, error);
    }
  }
  const name = publishedNames(read);
  const units = read.flatMap((document) => {
    try {
      return readEarlier(document.text, name(document)).map(publishedUnit);
    } catch (error) {
      return fail(document.file, error);
    }
  });
  return { units, failures };
}
