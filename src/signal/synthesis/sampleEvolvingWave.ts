import type { EvolvingWave } from './evolvingWave.ts';
import { gaussianNumbers } from './gaussianNumbers.ts';
import { quantised } from './quantised.ts';
import { randomNumbers } from './randomNumbers.ts';

export interface EvolvingSampling {
  readonly sampleRateHz: number;
  readonly durationS: number;
  /** Time of the first sample. Default 0. */
  readonly startS?: number;
  /** Gaussian, white, in the wave's unit. Default 0. */
  readonly noiseRms?: number;
  /** The converter; absent: not quantised. */
  readonly converter?: { readonly bits: number; readonly fullScale: number };
  /** Of the noise. Default 1. */
  readonly seed?: number;
}

/** An evolving wave as an oscilloscope records it: point samples, plus noise, then quantised. */
export function sampleEvolvingWave(wave: EvolvingWave, sampling: EvolvingSampling): Float64Array {
  const { sampleRateHz, durationS, startS = 0, noiseRms = 0, converter, seed = 1 } = sampling;
  const count = Math.round(durationS * sampleRateHz);
  if (!(count >= 1 && Number.isFinite(count))) throw new RangeError(`no record of ${count} samples`);
  const noise = gaussianNumbers(randomNumbers(seed));
  return Float64Array.from({ length: count }, (_, i) => {
    const value = wave.at(startS + i / sampleRateHz);
    const noisy = noiseRms > 0 ? value + noiseRms * noise() : value;
    return converter === undefined ? noisy : quantised(noisy, converter.bits, converter.fullScale);
  });
}
