import { readFile } from 'node:fs/promises';
import {
  type CarriedCapture,
  type CarriedOptions,
  carriedCaptures,
  differenceWords,
  type OpenedSheet,
  type RecheckDocument,
  readEvidence,
  recheckLines,
} from '../../entry/evidence.ts';
import { parseClaim } from '../../entry/grammar.ts';
import {
  type Assay,
  errorWords,
  type FailedResult,
  failureLine,
  jsonText,
  MeasureError,
} from '../../entry/measuring.ts';
import { exitCodes, unreadable } from '../failures.ts';
import { type Found, findCaptures } from '../findCaptures.ts';
import { failedResult, type MeasureFileOptions, measureFile } from '../measureFile.ts';
import { version } from '../program.ts';
import { progressLine } from '../progressLine.ts';
import { digest, readBytes, regularFile } from '../reading/readText.ts';
import { openPress } from '../report/openPress.ts';

/** The flags of `recheck` as commander hands them over. */
export interface RecheckFlags {
  readonly current?: string;
  readonly json?: boolean;
}

type Notice = RecheckDocument['differences'][number];

/** Checks a sheet against itself and its captures, prints what was found, and sets the exit code. */
export async function recheckFile(
  sheet: string,
  named: readonly string[],
  flags: RecheckFlags,
): Promise<void> {
  try {
    const found = await findCaptures(named);
    const opened = await openedSheet(sheet);
    const { captures, carried, differences, failures } =
      'damage' in opened
        ? { captures: [], carried: [], differences: [opened.damage], failures: [] }
        : await differencesOf(opened, found, flags);
    const same = differences.length === 0;
    for (const failure of failures) process.stderr.write(`${failureLine(failure)}\n`);
    print({ schema: 'sineassay/recheck@1', sheet, captures, carried, same, differences }, flags);
    process.exitCode = failures.length > 0 ? exitCodes.usage : same ? exitCodes.ok : exitCodes.claim;
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    process.stderr.write(`${failureLine(failedResult(sheet, error))}\n`);
    process.exitCode = exitCodes.usage;
  }
}

/** Data that can't be read any more were changed: that is an answer, and no failure to read a file. */
async function openedSheet(sheet: string): Promise<OpenedSheet | { readonly damage: Notice }> {
  const bytes = await readBytes(sheet);
  const text = bytes.toString('utf8');
  try {
    const opened = readEvidence(text);
    // Bytes that are no text become replacement marks, which a sheet may well have written itself.
    return Buffer.from(text).equals(bytes) ? opened : { damage: differenceWords({ code: 'file.bytes' }) };
  } catch (error) {
    if (!(error instanceof MeasureError) || error.code !== 'sheet.damaged') throw error;
    const { code, message, received } = errorWords(error);
    return { damage: { code, message: `${message} Found: ${received}.` } };
  }
}

async function differencesOf(
  opened: OpenedSheet,
  found: readonly Found[],
  { current }: RecheckFlags,
): Promise<
  Pick<RecheckDocument, 'captures' | 'carried' | 'differences'> & {
    readonly failures: readonly FailedResult[];
  }
> {
  const { evidence } = opened;
  const { recheckCaptures, recheckSheet } = await import('../../entry/drawing.ts');
  const itself = recheckSheet(await openPress(), opened, version);
  const { measured, strangers, failures } = await measuredAgain(evidence, found, current);
  const { carried, differences: again } = recheckCaptures(
    evidence,
    measured.map(({ assays }) => assays),
  );
  return {
    captures: measured.map(({ file }) => file),
    carried,
    differences: [...itself, ...strangers, ...again],
    failures,
  };
}

function print(document: RecheckDocument, { json }: RecheckFlags): void {
  const width = Math.min(100, process.stdout.columns ?? 80);
  const text = json ? jsonText(document, 2) : recheckLines(document, { width }).join('\n');
  process.stdout.write(`${text}\n`);
}

interface MeasuredAgain {
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
async function measuredAgain(
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
  return {
    measured,
    strangers: isNone ? [differenceWords({ code: 'capture.none', captures: found.length })] : [],
    failures,
  };
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
