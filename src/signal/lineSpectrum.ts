import { cos } from '../base/elementary/cos.ts';
import { sin } from '../base/elementary/sin.ts';
import { decimate } from './decimate.ts';
import { KERNEL_BINS, kaiserBessel, kaiserBesselTransform } from './kaiserBessel.ts';
import { powerOfTwoAtLeast, realTransform, type Spectrum } from './spectrum.ts';

/**
 * Fourier sums of a real record at evenly spaced frequencies that need be no bins of any transform:
 * X[k] = Σ x[n] e^(−i k·spacing·n), k = 0 … count − 1.
 *
 * The record, padded to at least twice its length, goes through the fast transform, and each line is read
 * between the bins with a Kaiser-Bessel kernel whose own shape was divided out of the record before. Where all
 * lines lie low, the record is thinned out first.
 *
 * @param samples - shape N ≥ 1, finite. Not changed.
 * @param spacing - radians a sample, > 0; (count − 1)·spacing ≤ π.
 * @returns `count` lines in the unit of the samples; a sine of amplitude A on line k gives |X[k]| = A·N/2.
 * @throws RangeError where the lines pass π.
 * @remarks Good to 1e-9 of Σ|x|; where the record is thinned out, 1e-5 of what lies far above the lines folds
 * onto them. Cost linear in N, but for the logarithm of the transform.
 * @see J. A. Fessler, B. P. Sutton, "Nonuniform fast Fourier transforms using min-max interpolation", IEEE
 * Trans. Signal Process. 51(2), 2003, 560–574 (from memory).
 */
export function lineSpectrum(samples: Float64Array, spacing: number, count: number): Spectrum {
  return lineReader(samples.length, spacing, count)(samples);
}

/** `lineSpectrum` for many records of one length N: kernel and transform are made once. */
export function lineReader(
  length: number,
  spacing: number,
  count: number,
): (samples: Float64Array) => Spectrum {
  const highest = (count - 1) * spacing;
  if (!(spacing > 0 && count >= 1 && highest <= Math.PI * (1 + 1e-12))) {
    throw new RangeError(`no ${count} lines ${spacing} rad apart below half the sample rate`);
  }
  const factor = Math.max(1, Math.floor(Math.PI / (4 * Math.max(highest, spacing))));
  const shape = decimate(new Float64Array(length), factor);
  const centre = shape.samples.length >> 1;
  const size = powerOfTwoAtLeast(Math.max(2 * shape.samples.length, 2 * KERNEL_BINS));
  const transform = realTransform(size);
  const padded = new Float64Array(size);
  // Divided out of the record, so that the kernel's own shape falls out of the lines.
  const kernelShape = Float64Array.from(shape.samples, (_, n) => kaiserBesselTransform((n - centre) / size));
  const readers = Array.from({ length: count }, (_, k) =>
    binReader((k * spacing * factor * size) / (2 * Math.PI)),
  );
  return (samples) => {
    const thinned = decimate(samples, factor);
    for (let n = 0; n < thinned.samples.length; n++) {
      padded[(n - centre + size) % size] = thinned.samples[n]! / kernelShape[n]!;
    }
    const bins = transform(padded);
    const re = new Float64Array(count);
    const im = new Float64Array(count);
    for (let k = 0; k < count; k++) {
      const omega = k * spacing;
      const at = valueBetween(bins, readers[k]!);
      // Back from the thinned record's centre to sample 0, and the filter's gain taken out.
      const turn = omega * (thinned.first + centre * factor);
      const scale = factor / thinned.gainAt(omega);
      re[k] = scale * (at.re * cos(turn) + at.im * sin(turn));
      im[k] = scale * (at.im * cos(turn) - at.re * sin(turn));
    }
    return { re, im };
  };
}

/** The bins around a place of the spectrum, from `first` on, and the kernel's weight of each. */
interface BinReader {
  readonly first: number;
  readonly weights: Float64Array;
}

function binReader(bin: number): BinReader {
  const first = Math.ceil(bin - KERNEL_BINS / 2);
  const last = Math.floor(bin + KERNEL_BINS / 2);
  return {
    first,
    weights: Float64Array.from({ length: last - first + 1 }, (_, i) => kaiserBessel(bin - first - i)),
  };
}

function valueBetween(bins: Spectrum, { first, weights }: BinReader): { re: number; im: number } {
  const half = bins.re.length - 1;
  let re = 0;
  let im = 0;
  for (let i = 0; i < weights.length; i++) {
    const weight = weights[i]!;
    const j = first + i;
    // A real record's spectrum is mirrored, conjugate, at 0 and at half the sample rate.
    const mirrored = j < 0 || j > half;
    const from = j < 0 ? -j : mirrored ? 2 * half - j : j;
    re += weight * bins.re[from]!;
    im += weight * (mirrored ? -bins.im[from]! : bins.im[from]!);
  }
  return { re, im };
}
