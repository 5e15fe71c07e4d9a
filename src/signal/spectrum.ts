import FFT from 'fft.js';
import { log2 } from '../base/elementary/log2.ts';
import { fillFourierTable } from './fourierTable.ts';
import { complexBins, realSpectrum, type Spectrum } from './halfSizeTransform.ts';
import { keptBySize } from './keptBySize.ts';

export type { Spectrum };

/**
 * Discrete Fourier transform of a real record, unscaled: X[k] = Σ x[n] e^(−2πi kn/N), k = 0 … N/2.
 *
 * @param samples - shape N, N a power of two ≥ 4, finite. Not changed.
 * @returns N/2 + 1 bins in the unit of the samples; a sine of amplitude A on bin k gives |X[k]| = A·N/2.
 * @throws RangeError when N is not a power of two ≥ 4.
 * @remarks The package behind it gives NaN without a word for a size that it can't do, so this is its only door.
 * @example spectrum(Float64Array.of(1, 0, -1, 0)).re // Float64Array [0, 2, 0]
 */
export function spectrum(samples: Float64Array): Spectrum {
  return fourier(samples.length).spectrum(samples);
}

/** Both ways between records of one size and their spectra. */
export interface Fourier {
  /** As `spectrum`. */
  readonly spectrum: (samples: Float64Array) => Spectrum;
  /** The real record whose spectrum is given: N/2 + 1 bins, as `spectrum` returns them; not changed. */
  readonly inverse: (bins: Spectrum) => Float64Array;
  /** cos and −sin of 2πn/N in turn; shape 2N. Not to be changed. */
  readonly turns: Float64Array;
}

/**
 * `spectrum` and its inverse for records of one size N, with what depends on the size alone.
 *
 * @throws RangeError when N is not a power of two ≥ 4.
 */
export function fourier(size: number): Fourier {
  requirePowerOfTwo(size);
  return fourierOfSize(size);
}

/** By a complex transform of half as many points: neighbours in pairs, as they lie in memory. */
const fourierOfSize = keptBySize((size): Fourier => {
  const turns = new Float64Array(2 * size);
  fillFourierTable(turns);
  const points = size / 2;
  const fft = new FFT(points);
  // The package's own table comes from functions that engines round each in its way, and lies on the heap.
  fft.table = everySecondTurn(turns);
  const bins = new Float64Array(size);
  return {
    turns,
    spectrum: (samples) => {
      fft.transform(bins, samples);
      return realSpectrum(bins, turns);
    },
    inverse: (wanted) => {
      complexBins(wanted, turns, bins);
      const samples = new Float64Array(size);
      fft.inverseTransform(samples, bins);
      return samples;
    },
  };
});

/** The turns of half the size. */
function everySecondTurn(turns: Float64Array): Float64Array {
  const half = new Float64Array(turns.length / 2);
  for (let k = 0; k < half.length; k += 2) {
    half[k] = turns[2 * k]!;
    half[k + 1] = turns[2 * k + 1]!;
  }
  return half;
}

/** The smallest power of two that is at least `count` and at least 4: a size that `spectrum` takes. */
export function powerOfTwoAtLeast(count: number): number {
  return 2 ** Math.max(2, Math.ceil(log2(count)));
}

function requirePowerOfTwo(size: number): void {
  // A power of two has one bit, which the number below it has not.
  if (!(size >= 4 && size <= 2 ** 30) || !Number.isInteger(size) || (size & (size - 1)) !== 0) {
    throw new RangeError(`a spectrum needs a power of two of at least 4 samples, not ${size}`);
  }
}
