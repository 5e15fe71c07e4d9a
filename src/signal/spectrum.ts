import FFT from 'fft.js';
import { log2 } from '../base/elementary/log2.ts';
import { fillFourierTable } from './fourierTable.ts';
import { keptBySize } from './keptBySize.ts';

/** The bins 0 to N/2 of a real transform, split into real and imaginary parts. */
export interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Discrete Fourier transform of a real record, unscaled: X[k] = Σ x[n] e^(−2πi kn/N), k = 0 … N/2.
 *
 * @param samples - shape N, N a power of two ≥ 4, finite. Not changed.
 * @returns N/2 + 1 bins in the unit of the samples; a sine of amplitude A on bin k gives |X[k]| = A·N/2.
 * @throws RangeError when N is not a power of two ≥ 4.
 * @remarks The package behind it fills only the lower half and gives NaN without a word for a size it
 * can't do, so this is its only door.
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

const fourierOfSize = keptBySize((size): Fourier => {
  const fft = new FFT(size);
  // The package's own table comes from functions that engines round each in its way, and lies on the heap.
  const turns = new Float64Array(2 * size);
  fillFourierTable(turns);
  fft.table = turns;
  const packed = new Float64Array(2 * size);
  return {
    turns,
    spectrum: (samples) => {
      fft.realTransform(packed, samples);
      return unpacked(packed, size / 2 + 1);
    },
    inverse: (bins) => {
      pack(bins, packed);
      fft.completeSpectrum(packed);
      const complex = new Float64Array(2 * size);
      fft.inverseTransform(complex, packed);
      return unpacked(complex, size).re;
    },
  };
});

/**
 * The real record whose spectrum is given: the inverse of `spectrum`.
 *
 * @param bins - N/2 + 1 bins, as `spectrum` returns them. Not changed.
 * @returns shape N.
 * @throws RangeError when N is not a power of two ≥ 4.
 */
export function inverseSpectrum(bins: Spectrum): Float64Array {
  return fourier(2 * (bins.re.length - 1)).inverse(bins);
}

/** The package holds complex numbers in pairs. */
function unpacked(packed: Float64Array, count: number): Spectrum {
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    re[k] = packed[2 * k]!;
    im[k] = packed[2 * k + 1]!;
  }
  return { re, im };
}

function pack({ re, im }: Spectrum, packed: Float64Array): void {
  for (let k = 0; k < re.length; k++) {
    packed[2 * k] = re[k]!;
    packed[2 * k + 1] = im[k]!;
  }
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
