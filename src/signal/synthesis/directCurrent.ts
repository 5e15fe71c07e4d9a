import type { KnownWave } from './knownWave.ts';
import { polylineWave } from './polylineWave.ts';

/** A constant: 1 unless told, and 0 for a record of nothing but noise. */
export function directCurrent(level: number = 1): KnownWave {
  return polylineWave('not classified', [{ phaseCycles: 0, value: level }]);
}
