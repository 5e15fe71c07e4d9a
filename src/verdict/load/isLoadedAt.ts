import type { EventResult, StepResult } from '../stepsDocument.ts';

/**
 * Whether the load that was told is on at an instant, as far as steps and events show: after a step on, before a step
 * off, and from where an event says that the load before it came on.
 *
 * @param atS - on the file's own time axis.
 * @returns true too where nothing shows otherwise.
 */
export function isLoadedAt(
  atS: number,
  steps: readonly Pick<StepResult, 'atS' | 'direction'>[],
  events: readonly EventResult[],
): boolean {
  const before = steps.filter((step) => step.atS.value <= atS).at(-1);
  if (before !== undefined) return before.direction === 'on';
  const [next] = steps.filter((step) => step.atS.value > atS);
  if (next !== undefined) return next.direction === 'off';
  return !events.some(
    (event) =>
      'startS' in event &&
      event.heldS !== undefined &&
      event.heldAtLeast !== true &&
      event.isAfterLess !== true &&
      event.startS.value - event.heldS.value > atS,
  );
}
