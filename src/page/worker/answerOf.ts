import type { HeldFiles } from './heldCaptures.ts';
import { measureHeld } from './measureHeld.ts';
import { overlayHeld } from './overlayHeld.ts';
import type { Requests } from './requests.ts';
import { sweepHeld } from './sweepHeld.ts';
import type { Task } from './task.ts';
import { viewHeld } from './viewHeld.ts';

type Answers = {
  readonly [Ask in keyof Requests]: (
    files: HeldFiles,
    given: Requests[Ask]['given'],
    task: Task,
  ) => Requests[Ask]['answer'] | Promise<Requests[Ask]['answer']>;
};

const answers: Answers = {
  open: (files, { id, name, file }) => {
    files.set(id, { name, file, read: null, measured: null, shown: null, outlet: null });
    return null;
  },
  measure: measureHeld,
  columns: viewHeld,
  overlay: overlayHeld,
  sweep: sweepHeld,
  close: (files, { id }) => {
    files.delete(id);
    return null;
  },
};

/** Answers one request. @throws MeasureError where what was asked can't be had; `Cancelled`. */
export async function answerOf<Ask extends keyof Requests>(
  files: HeldFiles,
  ask: Ask,
  given: Requests[keyof Requests]['given'],
  task: Task,
): Promise<Requests[Ask]['answer']> {
  // The page's own side pairs what is given with what is asked.
  return answers[ask](files, given as Requests[Ask]['given'], task);
}
