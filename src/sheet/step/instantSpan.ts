import { eventTimes } from './eventTimes.ts';
import type { StepSubject } from './stepSubject.ts';

/** Cycles shown before the instant and after its end. */
const cyclesBeside = 3;

/**
 * From when to when the change that a sheet is about is looked at closely, seconds on the file's axis.
 *
 * @param periodS - of one cycle, > 0.
 * @returns null where nothing changes.
 */
export function instantSpan(
  subject: StepSubject,
  periodS: number,
): { readonly fromS: number; readonly toS: number } | null {
  if (subject === null) return null;
  const { startS, endS } =
    subject.kind === 'step' ? { startS: subject.step.atS.value, endS: null } : eventTimes(subject.event);
  // A long event is looked at where it begins.
  const end = Math.min(endS ?? startS, startS + 6 * periodS);
  return { fromS: startS - cyclesBeside * periodS, toS: end + (cyclesBeside + 1) * periodS };
}
