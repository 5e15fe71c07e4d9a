import { captureEvidence } from '../../entry/evidence.ts';
import { type Assay, measuredNames, type ToldOptions } from '../../entry/measuring.ts';
import { version } from '../shipped.ts';
import { assayHeld } from './assayHeld.ts';
import { type HeldFiles, heldFile } from './heldCaptures.ts';
import { readHeld } from './readHeld.ts';
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
  const assays = await assayHeld(held, files, options, task);
  held.measured = { options, assays };
  held.shown = null;
  held.outlet = null;
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
