import { cos, exp, sin } from '../base/elementary.ts';
import { decimator } from './decimator.ts';
import { fourier, powerOfTwoAtLeast, type Spectrum } from './spectrum.ts';

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

/**
 * `lineSpectrum` for many records of one length N, or shorter ones with nothing behind: kernel and transform are made
 * once.
 */
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
  const { first, countOf, thin, gainAt } = decimator(factor);
  const thinnedLength = countOf(length);
  const centre = thinnedLength >> 1;
  const size = powerOfTwoAtLeast(Math.max(2 * thinnedLength, 2 * KERNEL_BINS));
  const { spectrum } = fourier(size);
  // Divided out of the record, so that the kernel's own shape falls out of the lines.
  const kernelShape = new Float64Array(thinnedLength);
  for (let n = 0; n <= centre; n++) {
    // The same on both sides of the centre, which may have one place more before it than behind.
    kernelShape[centre - n] = kaiserBesselTransform(n / size);
    if (centre + n < thinnedLength) kernelShape[centre + n] = kernelShape[centre - n]!;
  }
  const lines = lineTable(count, (spacing * factor * size) / (2 * Math.PI));
  for (let k = 0; k < count; k++) {
    const omega = k * spacing;
    // Back from the thinned record's centre to sample 0, and the filter's gain taken out.
    const turn = omega * (first + centre * factor);
    const scale = factor / gainAt(omega);
    lines.turnRe[k] = scale * cos(turn);
    lines.turnIm[k] = -scale * sin(turn);
  }
  const padded = new Float64Array(size);
  return (samples) => {
    padded.fill(0);
    placeAround(padded, thin(samples), centre, kernelShape);
    return readLines(spectrum(padded), lines);
  };
}

/** Where each line lies between the bins of the transform, and what it is multiplied by. */
interface LineTable {
  /** The first of its KERNEL_WIDTH bins; may lie below 0. */
  readonly firsts: Int32Array;
  /** The kernel's weight of each of them; KERNEL_WIDTH a line. */
  readonly weights: Float64Array;
  readonly turnRe: Float64Array;
  readonly turnIm: Float64Array;
}

/** @param spacing - in bins. */
function lineTable(count: number, spacing: number): LineTable {
  const firsts = new Int32Array(count);
  const weights = new Float64Array(count * KERNEL_WIDTH);
  for (let k = 0; k < count; k++) {
    firsts[k] = Math.ceil(k * spacing - KERNEL_BINS / 2);
    kaiserBesselWeights(k * spacing - firsts[k]!, weights, k * KERNEL_WIDTH);
  }
  return { firsts, weights, turnRe: new Float64Array(count), turnIm: new Float64Array(count) };
}

/** The record with its centre on place 0 of the transform, divided by the kernel's shape. */
function placeAround(
  padded: Float64Array,
  record: Float64Array,
  centre: number,
  kernelShape: Float64Array,
): void {
  for (let n = 0; n < centre; n++) padded[padded.length - centre + n] = record[n]! / kernelShape[n]!;
  for (let n = centre; n < record.length; n++) padded[n - centre] = record[n]! / kernelShape[n]!;
}

function readLines(bins: Spectrum, { firsts, weights, turnRe, turnIm }: LineTable): Spectrum {
  const re = new Float64Array(firsts.length);
  const im = new Float64Array(firsts.length);
  const last = bins.re.length - KERNEL_WIDTH;
  for (let k = 0; k < firsts.length; k++) {
    const first = firsts[k]!;
    const isInside = first >= 0 && first <= last;
    readLine(isInside ? bins : mirroredBins(bins, first), isInside ? first : 0, weights, k, re, im);
    const [x, y] = [re[k]!, im[k]!];
    re[k] = x * turnRe[k]! - y * turnIm[k]!;
    im[k] = x * turnIm[k]! + y * turnRe[k]!;
  }
  return { re, im };
}

/** Line k, read between the bins from `first` on. */
function readLine(
  bins: Spectrum,
  first: number,
  weights: Float64Array,
  k: number,
  re: Float64Array,
  im: Float64Array,
): void {
  let sumRe = 0;
  let sumIm = 0;
  for (let i = 0; i < KERNEL_WIDTH; i++) {
    const weight = weights[k * KERNEL_WIDTH + i]!;
    sumRe += weight * bins.re[first + i]!;
    sumIm += weight * bins.im[first + i]!;
  }
  re[k] = sumRe;
  im[k] = sumIm;
}

/** KERNEL_WIDTH bins that reach beyond the ends: a real record's spectrum is mirrored there, conjugate. */
function mirroredBins(bins: Spectrum, first: number): Spectrum {
  const half = bins.re.length - 1;
  const re = new Float64Array(KERNEL_WIDTH);
  const im = new Float64Array(KERNEL_WIDTH);
  for (let i = 0; i < KERNEL_WIDTH; i++) {
    const j = first + i;
    const isBeyond = j < 0 || j > half;
    const from = j < 0 ? -j : isBeyond ? 2 * half - j : j;
    re[i] = bins.re[from]!;
    im[i] = isBeyond ? -bins.im[from]! : bins.im[from]!;
  }
  return { re, im };
}

/** Width of the kernel in bins. */
export const KERNEL_BINS = 12;

/** π·√((W/2)²·(3/2)² − 0.8): the shape that fits a record padded to twice its length. */
const SHAPE: number = Math.PI * Math.sqrt((KERNEL_BINS / 2) ** 2 * 2.25 - 0.8);

/** Bins that a kernel weighs, at most. */
export const KERNEL_WIDTH: number = KERNEL_BINS + 1;

/** Steps of a bin in which the kernel is tabulated: cubics through four of them are then good to 1e-12. */
const STEPS = 512;

/**
 * The Kaiser-Bessel kernel that reads a spectrum between its bins: I₀(β·√(1 − (2x/W)²)) / I₀(β), x in bins; 1 at 0,
 * and nothing from half a width on, where it has come down to 1e-11.
 *
 * @param back - bins from the line back to the first that is weighed, W/2 − 1 ≤ back ≤ W/2.
 * @param weights - filled from `at` on: KERNEL_WIDTH of them, for that bin and those that follow.
 * @see P. J. Beatty, D. G. Nishimura, J. M. Pauly, IEEE Trans. Med. Imaging 24(6), 2005, 799–808, for β
 * (from memory).
 */
export function kaiserBesselWeights(back: number, weights: Float64Array, at: number): void {
  const steps = (KERNEL_BINS / 2 - back) * STEPS;
  const step = Math.floor(steps);
  // Between the second and the third of four, by Lagrange; all bins lie as far behind a step.
  const t = steps - step;
  const a = (-t * (t - 1) * (t - 2)) / 6;
  const b = ((t + 1) * (t - 1) * (t - 2)) / 2;
  const c = (-(t + 1) * t * (t - 2)) / 2;
  const d = ((t + 1) * t * (t - 1)) / 6;
  for (let i = 0, from = step; i < KERNEL_WIDTH; i++, from += STEPS) {
    weights[at + i] = a * table[from]! + b * table[from + 1]! + c * table[from + 2]! + d * table[from + 3]!;
  }
}

/**
 * Its Fourier transform, W·sinh(s)/s / I₀(β) with s = √(β² − (πWξ)²).
 *
 * @param xi - in cycles a bin, |ξ| ≤ 1/4: place in the record over the transform's size.
 */
function kaiserBesselTransform(xi: number): number {
  const s = Math.sqrt(SHAPE * SHAPE - (Math.PI * KERNEL_BINS * xi) ** 2);
  const grown = exp(s);
  return (KERNEL_BINS * (grown - 1 / grown)) / (2 * s) / besselI0AtShape;
}

/** 1/k²: more than the series has terms where x is at most SHAPE. A division takes several times as long. */
const INVERSE_SQUARES = Float64Array.from({ length: 100 }, (_, k) => 1 / (k * k));

/**
 * Modified Bessel function of the first kind, order 0, by the square of its argument: Σ ((x/2)^k / k!)². Below 0 it goes on
 * as J₀.
 */
function besselI0(square: number): number {
  const quarter = square / 4;
  let term = 1;
  let sum = 1;
  for (let k = 1; Math.abs(term) > 1e-17 * sum; k++) {
    term *= quarter * INVERSE_SQUARES[k]!;
    sum += term;
  }
  return sum;
}

const besselI0AtShape = besselI0(SHAPE * SHAPE);

/** The kernel at every step from one before −W/2 on, to one behind W/2; zeros beyond. */
const table: Float64Array = new Float64Array(KERNEL_WIDTH * STEPS + 4);
for (let i = 0; i <= (KERNEL_BINS / 2) * STEPS + 1; i++) {
  const x = (i - 1) / STEPS - KERNEL_BINS / 2;
  const value = besselI0(SHAPE * SHAPE * (1 - ((2 * x) / KERNEL_BINS) ** 2)) / besselI0AtShape;
  // The same on either side.
  table[i] = value;
  table[KERNEL_BINS * STEPS + 2 - i] = value;
}
