/** What a program on Node imports: bytes in, results out, a sheet out. The core by itself: `sineassay/core`. */
import { createHash } from 'node:crypto';
import { version } from './cli/program.ts';
import { openPress } from './cli/report/openPress.ts';
import { captureEvidence, cardEvidence } from './entry/evidence.ts';
import {
  type Assay,
  type AssayOptions,
  assayCapture,
  type MeasureResult,
  readCapture,
  worded,
} from './entry/measuring.ts';

export { type Figure, MeasureError, type MeasureResult } from './entry/measuring.ts';

export interface MeasureOptions extends AssayOptions {
  /** What the result calls the capture; a load in it is read as one of a file's name is. Default `capture`. */
  readonly file?: string;
}

/** One voltage of a capture: its result, and what `report` draws it from. */
export interface Measured {
  /** As `measure --json` prints it. */
  readonly result: MeasureResult;
  readonly assay: Assay;
  readonly options: AssayOptions;
}

/**
 * Reads and measures a capture.
 *
 * @param bytes - the whole file, as the oscilloscope wrote it.
 * @returns one entry a voltage that was asked for; one alone where none was.
 * @throws MeasureError with a stable `code` where it can't be read or measured.
 * @example const [outlet] = measure(await readFile('evening.csv'))
 */
export function measure(
  bytes: Uint8Array,
  { file = 'capture', ...options }: MeasureOptions = {},
): readonly Measured[] {
  const { sampleRateHz } = options;
  const capture = readCapture(bytes, sampleRateHz === undefined ? {} : { sampleRateHz });
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return assayCapture(capture, { file, sha256 }, options).map((assay) => ({
    result: worded(assay.result),
    assay,
    options,
  }));
}

/**
 * Draws the sheet of what was measured, with all that it was drawn from inside it, so that `recheck` can hold it
 * against the capture.
 *
 * @param picture - `changes`: what changes along the record, where something does; `card`: the answer at a glance.
 * @returns one self-contained SVG file.
 * @remarks Loads the drawing packages the first time.
 * @throws RangeError for `changes` of a steady record.
 */
export async function report(
  { assay, options }: Measured,
  picture: 'wave' | 'changes' | 'card' = 'wave',
): Promise<string> {
  if (picture === 'changes' && assay.dynamics === null)
    throw new RangeError('nothing changes along this record');
  const evidence =
    picture === 'card'
      ? cardEvidence(assay, 'light', options, version)
      : captureEvidence(assay, picture, options, version);
  const { sealedSheet } = await import('./entry/drawing.ts');
  return sealedSheet(await openPress(), evidence);
}
