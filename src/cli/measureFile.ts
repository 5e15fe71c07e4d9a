import { stat } from 'node:fs/promises';
import {
  type Assay,
  type AssayOptions,
  assayCapture,
  type Capture,
  errorWords,
  type FailedResult,
  fileAndChannel,
  joinCurrent,
  MeasureError,
} from '../entry/measuring.ts';
import type { Found } from './findCaptures.ts';
import type { ProgressLine } from './progressLine.ts';
import { type FileCapture, readFileCapture } from './reading/readFileCapture.ts';

export interface MeasureFileOptions extends AssayOptions {
  /** False: `current` names a channel of the capture, and never a file. Default true. */
  readonly joinsFiles?: boolean;
}

/** One capture's results, or the line that says why there are none. */
export type FileOutcome =
  | {
      readonly assays: readonly Assay[];
      readonly options: MeasureFileOptions;
      /** Of several channels asked for, those that can't be measured. */
      readonly unmeasured?: readonly FailedResult[];
    }
  | { readonly failed: FailedResult; readonly unmeasured?: readonly FailedResult[] };

/** A file, and what it is measured with: plain data, to be handed to other threads. */
export interface MeasureTask {
  readonly found: Found;
  readonly options: MeasureFileOptions;
}

/** How a file is read and measured, whatever is in it. */
interface MeasureFileRun {
  /** Threads beside this one that read a large file; absent: as the machine has cores. */
  readonly workers?: number;
  /** Of the file, for its results; absent: as it was found. A load that stands in no other place is read from it. */
  readonly name?: string;
  /** Told how far it is. */
  readonly progress?: Pick<ProgressLine, 'read' | 'measure'>;
}

/** Reads and measures one file; what is wrong with the file comes back as data, so that others go on. */
export async function measureFile(
  { file, error }: Found,
  options: MeasureFileOptions,
  { workers, name = file, progress }: MeasureFileRun = {},
): Promise<FileOutcome> {
  const unmeasured: FailedResult[] = [];
  try {
    if (error !== undefined) throw error;
    const { sampleRateHz } = options;
    const read = (from: string): Promise<FileCapture> =>
      readFileCapture(from, sampleRateHz === undefined ? {} : { sampleRateHz }, {
        ...(workers === undefined ? {} : { workers }),
        ...(progress === undefined ? {} : { readSoFar: progress.read }),
      });
    const { capture: whole, sha256 } = await read(file);
    const { capture, current } = await withCurrent(whole, options, read);
    const own = { ...options, ...(current === undefined ? {} : { current }), scalesInPlace: true };
    progress?.measure();
    const assays = assayCapture(capture, { file: name, sha256 }, own, (one) => {
      unmeasured.push(failedResult(file, one.error));
    });
    return { assays, options, ...(unmeasured.length === 0 ? {} : { unmeasured }) };
  } catch (problem) {
    if (!(problem instanceof MeasureError)) throw problem;
    return { failed: failedResult(file, problem), ...(unmeasured.length === 0 ? {} : { unmeasured }) };
  }
}

/** The current may stand in an export of its own: `FILE` or `FILE:NAME` where the capture has no such channel. */
async function withCurrent(
  capture: Capture,
  { current: wanted, joinsFiles = true }: MeasureFileOptions,
  read: (file: string) => Promise<FileCapture>,
): Promise<{ readonly capture: Capture; readonly current: string | undefined }> {
  if (wanted === undefined || !joinsFiles || capture.channels.some(({ name }) => name === wanted))
    return { capture, current: wanted };
  const { file, channel } = fileAndChannel(wanted);
  const isFile = await stat(file).then(
    (stats) => stats.isFile(),
    () => false,
  );
  if (!isFile) return { capture, current: wanted };
  return joinCurrent(capture, (await read(file)).capture, channel);
}

/** An error as results carry it. */
export function failedResult(file: string, error: MeasureError): FailedResult {
  return { file, error: errorWords(error) };
}
