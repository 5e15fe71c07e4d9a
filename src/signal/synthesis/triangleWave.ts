import type { KnownWave } from './knownWave.ts';
import { polylineWave } from './polylineWave.ts';

/** A triangle, peak 1, rising through zero at phase 0. */
export function triangleWave(): KnownWave {
  return polylineWave('distorted sine', [
    { phaseCycles: -0.25, value: -1 },
    { phaseCycles: 0.25, value: 1 },
  ]);
}
