import { gaussianNumbers, randomNumbers } from '../signal/randomNumbers.ts';
import type { EvolvingWave } from './evolvingWave.ts';
import type { KnownWave } from './knownWave.ts';

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

/**
 * A value as a converter of so many bits gives it: rounded to the nearest step (mid-tread: 0 is a code),
 * held at the rails −fullScale and fullScale − step.
 *
 * @param value - in U.
 * @param bits - whole, 1 and up.
 * @param fullScale - half the converter's range, in U; the step is 2 · fullScale / 2^bits.
 */
export function quantised(value: number, bits: number, fullScale: number): number {
  const codes = 2 ** (bits - 1);
  const code = Math.floor((value / fullScale) * codes + 0.5);
  return (Math.max(-codes, Math.min(codes - 1, code)) * fullScale) / codes;
}
