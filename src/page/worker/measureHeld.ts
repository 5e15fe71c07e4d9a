import { captureEvidence } from '../../entry/evidence.ts';
import {
  type Assay,
  assayCapture,
  type Capture,
  fileAndChannel,
  joinCurrent,
  measuredNames,
  type ToldOptions,
} from '../../entry/measuring.ts';
import { version } from '../shipped.ts';
import { type HeldFile, type HeldFiles, heldFile } from './heldCaptures.ts';
import { readBlob } from './readBlob.ts';
import type { Measured, MeasuredChannel, Requests } from './requests.ts';
import type { Task } from './task.ts';

/**
 * Measures a file that is held; reads it first where that was not done yet.
 *
 * @throws MeasureError as `readCapture` and `assayCapture` do; `Cancelled`.
 */
export async function measureHeld(
  files: HeldFiles,
  { id, options: told, isInverted }: Requests['measure']['given'],
  task: Task,
): Promise<Measured> {
  const held = heldFile(files, id);
  const { capture: whole, sha256 } = await readHeld(held, told.sampleRateHz, task);
  const options = isInverted ? { ...told, inverted: measuredNames(whole, told.voltage) } : told;
  const { capture, current } = await withCurrent(whole, files, options, task);
  const own = current === undefined ? options : { ...options, current };
  const assays = assayCapture(capture, { file: held.name, sha256 }, own);
  held.measured = { options, assays };
  held.shown = null;
  return {
    sha256,
    channels: whole.channels.map(({ name, quantity, unit }) => ({ name, quantity, unit })),
    startS: whole.startS,
    intervalS: whole.intervalS,
    endS: whole.startS + (whole.sampleCount - 1) * whole.intervalS,
    assays: assays.map((assay) => measuredChannel(assay, options)),
  };
}

function measuredChannel(assay: Assay, options: ToldOptions): MeasuredChannel {
  return {
    result: assay.result,
    method: assay.method,
    zeroS: assay.trace.zeroS ?? assay.result.capture.startS,
    wave: captureEvidence(assay, 'wave', options, version),
    changes: assay.dynamics === null ? null : captureEvidence(assay, 'changes', options, version),
  };
}

async function readHeld(
  held: HeldFile,
  sampleRateHz: number | undefined,
  task: Task,
): Promise<NonNullable<HeldFile['read']>> {
  if (held.read === null || held.read.sampleRateHz !== sampleRateHz) {
    const read = await readBlob(held.file, sampleRateHz === undefined ? {} : { sampleRateHz }, task);
    held.read = { ...read, sampleRateHz };
  }
  return held.read;
}

/** The current may stand in another file on the page: `FILE` or `FILE:NAME` where the capture has no such channel. */
async function withCurrent(
  capture: Capture,
  files: HeldFiles,
  { current: wanted, sampleRateHz }: ToldOptions,
  task: Task,
): Promise<{ readonly capture: Capture; readonly current: string | undefined }> {
  if (wanted === undefined || capture.channels.some(({ name }) => name === wanted))
    return { capture, current: wanted };
  const { file, channel } = fileAndChannel(wanted);
  const other = [...files.values()].find(({ name }) => name === file);
  if (other === undefined) return { capture, current: wanted };
  return joinCurrent(capture, (await readHeld(other, sampleRateHz, task)).capture, channel);
}
