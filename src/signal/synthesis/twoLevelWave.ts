import { type KnownWave, switchedKind } from './knownWave.ts';
import { quarterWaveSteps } from './quarterWaveSteps.ts';

/**
 * A wave that switches between +1 and −1 at chosen angles, as selective harmonic elimination does: +1 from
 * phase 0, then the other way at each angle.
 *
 * Vn = (4 / (nπ)) (1 − 2 cos(n·a1) + 2 cos(n·a2) − …), n odd, peak values.
 *
 * @param anglesDeg - ascending, above 0, below 90.
 * @param edgeCycles - time of each edge as a fraction of the period. Default 0: jumps.
 * @see H. S. Patel, R. G. Hoft, IEEE Trans. Ind. Appl. IA-9(3), 1973, 310-317
 */
export function twoLevelWave(anglesDeg: readonly number[], edgeCycles: number = 0): KnownWave {
  const steps = [0, ...anglesDeg].map((angle, i) => ({
    phaseCycles: angle / 360,
    rise: i % 2 === 0 ? 2 : -2,
  }));
  return quarterWaveSteps(switchedKind('square', 2 + 4 * anglesDeg.length), steps, edgeCycles);
}
