import type { StepCurve } from './stepPicture.ts';

/**
 * One curve for each standard and quantity: the strictest that the step stays inside, else the nearest.
 *
 * @param curves - of one step.
 * @returns those from public pages first, else in the order given.
 */
export function chosenCurves(curves: readonly StepCurve[]): StepCurve[] {
  const chosen = new Map<string, StepCurve>();
  for (const candidate of curves) {
    const key = `${candidate.curve.standard} ${candidate.curve.quantity}`;
    const held = chosen.get(key);
    if (held === undefined || tells(candidate) > tells(held)) chosen.set(key, candidate);
  }
  return [...chosen.values()].sort(
    (a, b) => Number(a.curve.provenance === 'memory') - Number(b.curve.provenance === 'memory'),
  );
}

/** Larger for a curve that says more: inside with little to spare, then outside by little. */
function tells({ side, worst }: StepCurve): number {
  return side === 'inside' ? 1 / (1 + worst.marginPercent) : worst.marginPercent;
}
