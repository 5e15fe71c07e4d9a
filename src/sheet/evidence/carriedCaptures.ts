import type { CarriedCapture, CarriedUnit } from './evidence.ts';

/** Every capture that stands behind a sheet of several. */
export function carriedCaptures({
  told,
}: {
  readonly told: readonly CarriedUnit[];
}): readonly CarriedCapture[] {
  return told.flatMap(({ sweep, steps, transfers }) => [...sweep, ...steps, ...transfers]);
}
