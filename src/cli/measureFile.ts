import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import {
  type Assay,
  type AssayOptions,
  assayCapture,
  type Capture,
  type FailedResult,
  fileAndChannel,
  joinCurrent,
  MeasureError,
  readCapture,
} from '../entry/measuring.ts';
import type { Found } from './findCaptures.ts';
import { systemReason } from './systemReason.ts';

export interface MeasureFileOptions extends AssayOptions {
  /** For a file without a time of its own. */
  readonly sampleRateHz?: number;
}

/** One capture's results, or the line that says why there are none. */
export type FileOutcome = { readonly assays: readonly Assay[] } | { readonly failed: FailedResult };

/** Reads and measures one file; what is wrong with the file comes back as data, so that others go on. */
export async function measureFile({ file, error }: Found, options: MeasureFileOptions): Promise<FileOutcome> {
  try {
    if (error !== undefined) throw error;
    const bytes = await readBytes(file);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const { sampleRateHz } = options;
    const read = (from: Uint8Array): Capture =>
      readCapture(from, sampleRateHz === undefined ? {} : { sampleRateHz });
    const { capture, current } = await withCurrent(read(bytes), options.current, read);
    const own = current === undefined ? options : { ...options, current };
    return { assays: assayCapture(capture, { file, sha256 }, own) };
  } catch (problem) {
    if (!(problem instanceof MeasureError)) throw problem;
    return { failed: failedResult(file, problem) };
  }
}

/** The current may stand in an export of its own: `FILE` or `FILE:NAME` where the capture has no such channel. */
async function withCurrent(
  capture: Capture,
  wanted: string | undefined,
  read: (bytes: Uint8Array) => Capture,
): Promise<{ readonly capture: Capture; readonly current: string | undefined }> {
  if (wanted === undefined || capture.channels.some(({ name }) => name === wanted))
    return { capture, current: wanted };
  const { file, channel } = fileAndChannel(wanted);
  const isFile = await stat(file).then(
    (stats) => stats.isFile(),
    () => false,
  );
  if (!isFile) return { capture, current: wanted };
  return joinCurrent(capture, read(await readBytes(file)), channel);
}

/** An error as results carry it. */
export function failedResult(file: string, { code, message, detail }: MeasureError): FailedResult {
  return { file, error: { code, message, ...detail } };
}

/** What the system said of a file that it would not hand over. */
export function unreadable(problem: unknown): MeasureError {
  return new MeasureError('file.unreadable', 'The file could not be read.', {
    expected: 'a file that you may read',
    received: systemReason(problem),
    advice: 'Check that it is there, not open elsewhere, and that you may read it',
  });
}

async function readBytes(file: string): Promise<Uint8Array> {
  try {
    return await readFile(file);
  } catch (problem) {
    throw unreadable(problem);
  }
}
