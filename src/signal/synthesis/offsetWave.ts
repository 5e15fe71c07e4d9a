import type { KnownWave } from './knownWave.ts';
import { waveTruth } from './waveTruth.ts';

/** The wave plus a constant, in the wave's unit. */
export function offsetWave(wave: KnownWave, offset: number): KnownWave {
  const { truth } = wave;
  return {
    kind: wave.kind,
    at: (phaseCycles) => wave.at(phaseCycles) + offset,
    truth: waveTruth({
      rms: Math.sqrt(truth.rms ** 2 + 2 * truth.mean * offset + offset ** 2),
      mean: truth.mean + offset,
      peak: truth.peak + offset,
      trough: truth.trough + offset,
      meanAbsoluteAbout: (level) => truth.meanAbsoluteAbout(level - offset),
      harmonic: truth.harmonic,
    }),
  };
}
