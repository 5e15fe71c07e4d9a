import { type KnownWave, switchedKind } from './knownWave.ts';
import { quarterWaveSteps } from './quarterWaveSteps.ts';

/**
 * A wave that switches between 0 and ±1 at chosen angles, as selective harmonic elimination does: on at the
 * first angle of the quarter, off at the second, and so on.
 *
 * Vn = (4 / (nπ)) (cos(n·a1) − cos(n·a2) + cos(n·a3) − …), n odd, peak values.
 *
 * @param anglesDeg - odd in number, so that the wave is on at its crest; ascending, above 0, below 90.
 * @param edgeCycles - time of each edge as a fraction of the period. Default 0: jumps.
 */
export function threeLevelWave(anglesDeg: readonly number[], edgeCycles: number = 0): KnownWave {
  if (anglesDeg.length % 2 === 0) throw new RangeError('a three-level wave needs an odd number of angles');
  const steps = anglesDeg.map((angle, i) => ({ phaseCycles: angle / 360, rise: i % 2 === 0 ? 1 : -1 }));
  return quarterWaveSteps(switchedKind('modified sine', 4 * anglesDeg.length), steps, edgeCycles);
}
