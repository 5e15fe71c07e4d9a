import { gaussianNumbers } from './gaussianNumbers.ts';
import type { KnownWave } from './knownWave.ts';
import { quantised } from './quantised.ts';
import { randomNumbers } from './randomNumbers.ts';

export interface SamplingOptions {
  readonly frequencyHz: number;
  readonly sampleRateHz: number;
  /** Length of the record; need not be whole. */
  readonly cycles: number;
  /** The wave's phase at the first sample. Default 0. */
  readonly startPhaseCycles?: number;
  /** Added to every sample, in the wave's unit. Default 0. */
  readonly offset?: number;
  /** Gaussian, white, in the wave's unit. Default 0. */
  readonly noiseRms?: number;
  /** Of the converter; absent: not quantised. Needs `fullScale`. */
  readonly bits?: number;
  /** Half the converter's range, in the wave's unit. */
  readonly fullScale?: number;
  /** Of the noise. Default 1. */
  readonly seed?: number;
}

/**
 * The wave as an oscilloscope records it: point samples, plus offset and noise, then quantised.
 *
 * @returns shape round(cycles · sampleRateHz / frequencyHz), in the wave's unit.
 * @throws RangeError where that comes to less than one sample, or `bits` stands without `fullScale`.
 */
export function sampleWave(wave: KnownWave, options: SamplingOptions): Float64Array {
  const { frequencyHz, sampleRateHz, cycles, startPhaseCycles = 0, offset = 0, noiseRms = 0 } = options;
  const { bits, fullScale, seed = 1 } = options;
  const count = Math.round((cycles * sampleRateHz) / frequencyHz);
  if (!(count >= 1 && Number.isFinite(count))) throw new RangeError(`no record of ${count} samples`);
  if (bits !== undefined && !(Number.isInteger(bits) && bits >= 1)) {
    throw new RangeError(`bits must be whole and at least 1, not ${bits}`);
  }
  if (bits !== undefined && fullScale === undefined) throw new RangeError('bits need a full scale');
  const noise = gaussianNumbers(randomNumbers(seed));
  return Float64Array.from({ length: count }, (_, i) => {
    const value = wave.at(startPhaseCycles + (i * frequencyHz) / sampleRateHz) + offset;
    const noisy = noiseRms > 0 ? value + noiseRms * noise() : value;
    return bits !== undefined && fullScale !== undefined ? quantised(noisy, bits, fullScale) : noisy;
  });
}
