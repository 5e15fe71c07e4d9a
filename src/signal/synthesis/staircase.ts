import type { KnownWave } from './knownWave.ts';
import { quarterWaveSteps } from './quarterWaveSteps.ts';

/**
 * A staircase of 2k + 1 equal levels, peak 1: one step up at each angle of the first quarter.
 *
 * Vn = (4 / (nπk)) Σ cos(n·angle), n odd, peak values.
 *
 * @param anglesDeg - k of them, ascending, above 0, below 90.
 * @param edgeCycles - time of each edge as a fraction of the period. Default 0: jumps.
 */
export function staircase(anglesDeg: readonly number[], edgeCycles: number = 0): KnownWave {
  const rise = 1 / anglesDeg.length;
  const steps = anglesDeg.map((angle) => ({ phaseCycles: angle / 360, rise }));
  return quarterWaveSteps(anglesDeg.length > 1 ? 'stepped' : 'modified sine', steps, edgeCycles);
}
