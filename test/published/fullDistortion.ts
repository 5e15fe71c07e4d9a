import type { WaveTruth } from '../../src/synth/knownWave.ts';

/** THD over all harmonics without end: what is neither DC nor fundamental, over the fundamental. */
export function fullDistortion({ rms, mean, fundamentalRms }: WaveTruth): number {
  return Math.sqrt(rms ** 2 - mean ** 2 - fundamentalRms ** 2) / fundamentalRms;
}
