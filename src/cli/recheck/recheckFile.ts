import { type OpenedSheet, type RecheckDocument, readEvidence, recheckLines } from '../../entry/evidence.ts';
import { type FailedResult, failureLine, jsonText, MeasureError } from '../../entry/measuring.ts';
import { exitCodes } from '../exitCodes.ts';
import { type Found, findCaptures } from '../findCaptures.ts';
import { failedResult } from '../measureFile.ts';
import { version } from '../program.ts';
import { readBytes } from '../reading/readText.ts';
import { openPress } from '../report/openPress.ts';
import { measuredAgain } from './measuredAgain.ts';

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
    return Buffer.from(text).equals(bytes) ? opened : { damage: otherBytes };
  } catch (error) {
    if (!(error instanceof MeasureError) || error.code !== 'sheet.damaged') throw error;
    return { damage: { code: error.code, message: `${error.message} Found: ${error.detail.received}.` } };
  }
}

const otherBytes: Notice = {
  code: 'file.bytes',
  message: 'It holds bytes that are no text (UTF-8): the file was changed after it was written.',
};

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
