import { cos } from '../base/elementary/cos.ts';
import { sin } from '../base/elementary/sin.ts';
import { sampleTurns } from '../signal/sampleTurns.ts';

/**
 * Deviation factor: the largest distance of a cycle from the sine of the same frequency and AC RMS, over
 * that sine's peak; the sine's phase is the one that makes the largest distance least.
 *
 * @param cycle - shape N, one cycle, evenly spaced. Not changed.
 * @param mean - of the cycle.
 * @param acRms - of the cycle, > 0, same unit.
 * @param phaseRad - of the cycle's fundamental: where the search starts.
 * @returns a ratio, ≥ 0; 0 for a sine.
 * @see NEMA MG 1, IEEE Std 115 (from memory).
 */
export function deviationFactor(cycle: Float64Array, mean: number, acRms: number, phaseRad: number): number {
  const peak = Math.SQRT2 * acRms;
  const { re, im, omega } = sampleTurns(cycle.length, (2 * Math.PI) / cycle.length);
  const largest = (phase: number): number => {
    // The turns count from the middle of the cycle.
    const atCentre = phase + (omega * (cycle.length - 1)) / 2;
    const inPhase = peak * cos(atCentre);
    const ahead = peak * sin(atCentre);
    let worst = 0;
    for (let n = 0; n < cycle.length; n++) {
      const apart = Math.abs(cycle[n]! - mean - (inPhase * im[n]! + ahead * re[n]!));
      if (apart > worst) worst = apart;
    }
    return worst;
  };
  // The largest distance is a maximum of smooth functions: look around coarsely, then close in twice.
  let best = phaseRad;
  let least = largest(best);
  for (let reach = 0.5; reach > 1e-5; reach /= 8) {
    const centre = best;
    for (let i = -8; i <= 8; i++) {
      const phase = centre + (i * reach) / 8;
      const worst = largest(phase);
      if (worst < least) [best, least] = [phase, worst];
    }
  }
  return least / peak;
}
