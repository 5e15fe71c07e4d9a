import { open } from 'node:fs/promises';
import { type Comparand, readMeasureDocument } from '../../entry/comparing.ts';
import { captureEvidence, type OneCapture, readEvidence } from '../../entry/evidence.ts';
import { MeasureError } from '../../entry/measuring.ts';
import { type MeasureFileOptions, measureFile } from '../measureFile.ts';
import { version } from '../program.ts';
import type { ProgressLine } from '../progress/progressLine.ts';
import { readText } from '../reading/readText.ts';
import { regularFile } from '../reading/regularFile.ts';
import { unreadable } from '../unreadable.ts';

/** One of the two that are compared. */
export interface Side {
  readonly comparand: Comparand;
  /** What a sheet of both would carry of it; null for a result without a wave. */
  readonly evidence: OneCapture | null;
}

/**
 * Reads what is named: a sheet or a result as it stands, a capture by measuring it. Which it is, its content says.
 *
 * @throws MeasureError where it can't be read or measured, or is of several captures.
 */
export async function readSide(
  file: string,
  options: MeasureFileOptions,
  progress: ProgressLine,
): Promise<Side> {
  const start = await startOf(file);
  if (start.startsWith('<svg')) return sideOfSheet(await readText(file));
  if (start.startsWith('{')) {
    return {
      comparand: { result: readMeasureDocument(await readText(file)), budgets: null },
      evidence: null,
    };
  }
  progress.begin(file);
  const outcome = await measureFile({ file }, options, { progress });
  if ('failed' in outcome) {
    const { code, message, ...detail } = outcome.failed.error;
    throw new MeasureError(code, message, detail);
  }
  const [assay] = outcome.assays;
  if (assay === undefined) throw new RangeError('A capture that was measured has a result');
  return {
    comparand: { result: assay.result, budgets: assay.budgets },
    evidence: captureEvidence(assay, 'wave', outcome.options, version),
  };
}

function sideOfSheet(text: string): Side {
  const { evidence } = readEvidence(text);
  if ('told' in evidence || evidence.picture === 'overlay') {
    throw new MeasureError('sheet.several', 'The sheet is of several captures.', {
      expected: 'a sheet of one capture',
      advice: 'Name the sheets of the two captures, or the captures',
    });
  }
  return { comparand: { result: evidence.result, budgets: null }, evidence };
}

/** The first characters, without a mark of the encoding. */
async function startOf(file: string): Promise<string> {
  try {
    await regularFile(file);
    const handle = await open(file);
    try {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(64), 0, 64, 0);
      return buffer
        .toString('utf8', 0, bytesRead)
        .replace(/^\ufeff/, '')
        .trimStart();
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw error instanceof MeasureError ? error : unreadable(error);
  }
}
