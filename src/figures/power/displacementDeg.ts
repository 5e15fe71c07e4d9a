import { atan2 } from '../../base/elementary/atan2.ts';
import type { PowerBasis } from './powerBasis.ts';

/**
 * θ1: by how much the current's fundamental lags the voltage's. A heater shows the skew here: θ1 / 360° periods.
 *
 * @param near - the answer is taken within half a turn of this basis' own, so that a doubt does not jump at 180°.
 * @returns degrees, positive where it lags; (−180, 180] for `near` itself.
 */
export function displacementDeg(basis: PowerBasis, near: PowerBasis = basis): number {
  const { inPhaseA, laggingA } = basis;
  const reference = atan2(near.laggingA, near.inPhaseA);
  const turn = atan2(
    laggingA * near.inPhaseA - inPhaseA * near.laggingA,
    inPhaseA * near.inPhaseA + laggingA * near.laggingA,
  );
  return (180 / Math.PI) * (reference + turn);
}
