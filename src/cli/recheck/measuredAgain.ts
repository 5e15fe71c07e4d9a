import { readFile } from 'node:fs/promises';
import {
  type CarriedCapture,
  type CarriedOptions,
  carriedCaptures,
  type OpenedSheet,
  type RecheckDocument,
} from '../../entry/evidence.ts';
import { parseClaim } from '../../entry/grammar.ts';
import type { Assay, FailedResult } from '../../entry/measuring.ts';
import { MeasureError } from '../../entry/measuring.ts';
import { digest } from '../digest.ts';
import type { Found } from '../findCaptures.ts';
import { failedResult, type MeasureFileOptions, measureFile } from '../measureFile.ts';
import { progressLine } from '../progress/progressLine.ts';
import { regularFile } from '../reading/regularFile.ts';
import { unreadable } from '../unreadable.ts';

export interface MeasuredAgain {
  readonly measured: readonly { readonly file: string; readonly assays: readonly Assay[] }[];
  /** Said where none of the captures belongs to the sheet. */
  readonly strangers: RecheckDocument['differences'];
  readonly failures: readonly FailedResult[];
}

type Evidence = OpenedSheet['evidence'];
type Belonging = { readonly file: string; readonly carried: CarriedCapture };

/**
 * Measures the captures of a sheet again, with the options that it carries. Of several, those are taken whose
 * digest it carries; one alone is measured whatever it is.
 *
 * @param current - the file that the current was taken from. One that the sheet itself names is never opened: it
 * may come from anybody.
 */
export async function measuredAgain(
  evidence: Evidence,
  found: readonly Found[],
  current: string | undefined,
): Promise<MeasuredAgain> {
  const failures: FailedResult[] = [];
  const fail = (file: string, error: MeasureError): void => {
    failures.push(failedResult(file, error));
  };
  const carried = carriedCaptures(evidence);
  const belonging: Belonging[] = [];
  for (const { file, error } of found) {
    try {
      if (error !== undefined) throw error;
      const itself = await carriedOf(carried, file, found.length === 1);
      if (itself !== null) belonging.push({ file, carried: itself });
    } catch (problem) {
      if (!(problem instanceof MeasureError)) throw problem;
      fail(file, problem);
    }
  }
  const measured = [];
  const progress = progressLine(belonging.length);
  for (const {
    file,
    carried: { file: name, options },
  } of belonging) {
    progress.begin(file);
    try {
      const outcome = await measureFile({ file }, measureOptions(options, current), { name, progress });
      if ('failed' in outcome) failures.push(withAdvice(outcome.failed, options, current));
      else measured.push({ file, assays: outcome.assays });
    } catch (problem) {
      if (!(problem instanceof MeasureError)) throw problem;
      fail(file, problem);
    }
  }
  progress.clear();
  const isNone = belonging.length === 0 && found.length > 0 && failures.length === 0;
  return { measured, strangers: isNone ? [stranger(found.length)] : [], failures };
}

/** What the sheet carries of a file; null where it doesn't belong to the sheet. */
async function carriedOf(
  carried: readonly CarriedCapture[],
  file: string,
  isAlone: boolean,
): Promise<CarriedCapture | null> {
  const [first, ...others] = carried;
  if (isAlone && first !== undefined && others.length === 0) return first;
  await regularFile(file);
  const bytes = await readFile(file).catch((error: unknown) => {
    throw unreadable(error);
  });
  const sha256 = digest(bytes);
  return carried.find((capture) => capture.sha256 === sha256) ?? null;
}

function measureOptions(
  { claims, ...others }: CarriedOptions,
  current: string | undefined,
): MeasureFileOptions {
  return {
    ...others,
    claims: claims.map(parseClaim),
    ...(current === undefined ? { joinsFiles: false } : { current }),
  };
}

function withAdvice(failed: FailedResult, options: CarriedOptions, given: string | undefined): FailedResult {
  const { current } = options;
  if (failed.error.code !== 'channel.unknown' || current === undefined || given !== undefined) return failed;
  const advice = `If the current came from a file of its own (the sheet says ${current}), name that with --current`;
  return { ...failed, error: { ...failed.error, advice } };
}

function stranger(count: number): RecheckDocument['differences'][number] {
  const captures = count === 1 ? 'The capture is none' : `None of the ${count} captures is one`;
  return { code: 'capture.none', message: `${captures} of this sheet: their SHA-256 differ.` };
}
