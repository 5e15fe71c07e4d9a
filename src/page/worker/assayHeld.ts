import {
  type Assay,
  assayCapture,
  type Capture,
  fileAndChannel,
  joinCurrent,
  type ToldOptions,
} from '../../entry/measuring.ts';
import type { HeldFile, HeldFiles } from './heldCaptures.ts';
import { readHeld } from './readHeld.ts';
import type { Task } from './task.ts';

/**
 * Measures a file that is held with some options; reads it first where that was not done yet.
 *
 * @throws MeasureError as `readCapture` and `assayCapture` do; `Cancelled`.
 */
export async function assayHeld(
  held: HeldFile,
  files: HeldFiles,
  options: ToldOptions,
  task: Task,
): Promise<readonly Assay[]> {
  const { capture: whole, sha256 } = await readHeld(held, options.sampleRateHz, task);
  const { capture, current } = await withCurrent(whole, files, options, task);
  const own = current === undefined ? options : { ...options, current };
  return assayCapture(capture, { file: held.name, sha256 }, own);
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
