import type { WaveTruth } from '../../src/synth/knownWave.ts';

/** How far a meter is off that takes the mean of |v| times the form factor of a sine: reading / rms − 1. */
export function averageRespondingError(truth: WaveTruth): number {
  return Math.PI / (2 * Math.SQRT2) / truth.formFactor() - 1;
}
