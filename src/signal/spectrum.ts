import FFT from 'fft.js';
import { cos, log2, sin } from '../base/elementary.ts';

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
interface Fourier {
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
const fourierOfSize = memoizeBySize((size): Fourier => {
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

/** The bins 0 to N/2 of a real transform, split into real and imaginary parts. */
export interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * The spectrum of N real samples from that of N/2 complex ones z[n] = x[2n] + i·x[2n + 1]:
 *
 * X[k] = E[k] + e^(−2πik/N)·O[k], E = (Z[k] + Z*[N/2 − k]) / 2 of the even samples, O = (Z[k] − Z*[N/2 − k]) / 2i of the odd
 *
 * @param bins - Z in pairs, shape N. Not changed.
 * @param turns - cos and −sin of 2πk/N in turn; shape 2N.
 * @see W. H. Press et al., Numerical Recipes, 3rd ed., §12.3.2 (from memory).
 */
function realSpectrum(bins: Float64Array, turns: Float64Array): Spectrum {
  const points = bins.length / 2;
  const re = new Float64Array(points + 1);
  const im = new Float64Array(points + 1);
  for (let k = 0; k <= points; k++) {
    const at = k === points ? 0 : 2 * k;
    const mirrored = k === 0 ? 0 : 2 * (points - k);
    const oddRe = 0.5 * (bins[at + 1]! + bins[mirrored + 1]!);
    const oddIm = 0.5 * (bins[mirrored]! - bins[at]!);
    const turnRe = turns[2 * k]!;
    const turnIm = turns[2 * k + 1]!;
    re[k] = 0.5 * (bins[at]! + bins[mirrored]!) + (turnRe * oddRe - turnIm * oddIm);
    im[k] = 0.5 * (bins[at + 1]! - bins[mirrored + 1]!) + (turnRe * oddIm + turnIm * oddRe);
  }
  return { re, im };
}

/**
 * The other way: Z[k] = E[k] + i·O[k].
 *
 * @param bins - filled with Z in pairs, shape N.
 */
function complexBins({ re, im }: Spectrum, turns: Float64Array, bins: Float64Array): void {
  const points = bins.length / 2;
  for (let k = 0; k < points; k++) {
    const mirrored = points - k;
    const unlikeRe = 0.5 * (re[k]! - re[mirrored]!);
    const unlikeIm = 0.5 * (im[k]! + im[mirrored]!);
    const turnRe = turns[2 * k]!;
    const turnIm = turns[2 * k + 1]!;
    // Turned back: by the conjugate.
    const oddRe = turnRe * unlikeRe + turnIm * unlikeIm;
    const oddIm = turnRe * unlikeIm - turnIm * unlikeRe;
    bins[2 * k] = 0.5 * (re[k]! + re[mirrored]!) - oddIm;
    bins[2 * k + 1] = 0.5 * (im[k]! - im[mirrored]!) + oddRe;
  }
}

/**
 * cos and −sin of 2πk/N in turn, k = 0 … N − 1, from the first eighth of the turn and its mirror images.
 *
 * @param table - filled; shape 2N, N a power of two ≥ 4.
 */
function fillFourierTable(table: Float64Array): void {
  const size = table.length / 2;
  const put = (k: number, cosine: number, sine: number): void => {
    table[2 * k] = cosine;
    table[2 * k + 1] = -sine;
  };
  for (let k = 0; k <= size / 8; k++) {
    const c = cos((2 * Math.PI * k) / size);
    const s = sin((2 * Math.PI * k) / size);
    put(k, c, s);
    put(size / 4 - k, s, c);
    put(size / 4 + k, -s, c);
    put(size / 2 - k, -c, s);
    put(size / 2 + k, -c, -s);
    put((3 * size) / 4 - k, -s, -c);
    put((3 * size) / 4 + k, s, -c);
    if (k > 0) put(size - k, c, -s);
  }
}

/**
 * A table that depends on a size alone, made once for each of the sizes asked for last.
 *
 * @param make - gives the same for the same size.
 * @param most - tables kept, ≥ 1. Default 8: as many as a long record asks for.
 */
export function memoizeBySize<Table>(make: (size: number) => Table, most = 8): (size: number) => Table {
  const kept = new Map<number, Table>();
  return (size) => {
    const table = kept.get(size) ?? make(size);
    // Put behind the others, so that the first is the one that nobody asked for the longest.
    kept.delete(size);
    kept.set(size, table);
    if (kept.size > most) kept.delete(kept.keys().next().value!);
    return table;
  };
}
