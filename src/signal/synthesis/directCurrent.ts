import type { KnownWave } from './knownWave.ts';
import { waveTruth } from './waveTruth.ts';

/** A constant: 1 unless told, and 0 for a record of nothing but noise. */
export function directCurrent(level: number = 1): KnownWave {
  return {
    kind: 'not classified',
    at: () => level,
    truth: waveTruth({
      rms: Math.abs(level),
      mean: level,
      peak: level,
      trough: level,
      meanAbsoluteAbout: (other) => Math.abs(level - other),
      harmonic: () => ({ rms: 0, phaseRad: 0 }),
    }),
  };
}
