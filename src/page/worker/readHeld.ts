import type { HeldFile } from './heldCaptures.ts';
import { readBlob } from './readBlob.ts';
import type { Task } from './task.ts';

/**
 * A file that is held, read; at once where it was read so already.
 *
 * @param sampleRateHz - for a file without a time of its own; undefined: not told.
 * @throws MeasureError as `readCapture` does; `Cancelled`.
 */
export async function readHeld(
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
