import { cos, log2, sin } from '../base/elementary.ts';
import { RUN_SAMPLES } from './recordParts.ts';
import { fourier, type Spectrum } from './spectrum.ts';

/** What the normal equations of a harmonic fit ask of the samples. Shapes 2K + 1: order 0, cosines, sines. */
export interface FoldedProjections {
  /** Σ y, Σ y·cos kωu, Σ y·sin kωu; u in samples from the record's centre. */
  readonly plain: Float64Array;
  /** The same of u·y. */
  readonly timed: Float64Array;
  /** Σ y². */
  readonly square: number;
  /** Positions of the missing samples, ascending. */
  readonly missing: readonly number[];
}

/** Sums held a bin: y, t·y, t²·y, u·y, t·u·y; t from the bin's middle, in bins. */
const SUMS = 5;

/**
 * Projections of a record on the harmonics of ω by way of one folded cycle: five sums for each phase bin, and the
 * harmonics of the bins. Its cost hardly depends on the number of orders.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param omega - radians a sample; orders·omega < π.
 * @remarks Within a bin the harmonic is a parabola: with 8πK bins or more it is off by 1e-4 of order K at most, and by
 * (k/K)³ of that in order k. The direct sums are in `projections`.
 */
export function foldedProjections(samples: Float64Array, omega: number, orders: number): FoldedProjections {
  const bins = 2 ** Math.ceil(log2(8 * Math.PI * Math.max(orders, 8)));
  const sums = new Float64Array(SUMS * bins);
  const centre = (samples.length - 1) / 2;
  const step = (omega / (2 * Math.PI)) * bins;
  const missing: number[] = [];
  let square = 0;
  for (let from = 0; from < samples.length; from += RUN_SAMPLES) {
    // The phase starts anew with each run, so that its whole bins stay small integers.
    const turned = step * (from - centre);
    const place = turned - bins * Math.floor(turned / bins);
    square += foldRun(sums, missing, samples, { from, place, step, bins });
  }
  return { ...harmonicsOf(sums, bins, orders), square, missing };
}

interface FoldedRun {
  readonly from: number;
  /** Of its first sample, in bins; each sample stands a step after the one before. */
  readonly place: number;
  readonly step: number;
  readonly bins: number;
}

/** @returns Σ y². */
function foldRun(
  sums: Float64Array,
  missing: number[],
  samples: Float64Array,
  { from, place, step, bins }: FoldedRun,
): number {
  const centre = (samples.length - 1) / 2;
  const end = Math.min(samples.length, from + RUN_SAMPLES);
  let square = 0;
  for (let n = from; n < end; n++) {
    const y = samples[n]!;
    if (Number.isNaN(y)) missing.push(n);
    else {
      // Not counted on from the sample before: a processor then works at several samples at once.
      const at = place + step * (n - from);
      const whole = at | 0;
      const t = at - whole - 0.5;
      const u = n - centre;
      const sum = SUMS * (whole & (bins - 1));
      const ty = t * y;
      sums[sum]! += y;
      sums[sum + 1]! += ty;
      sums[sum + 2]! += t * ty;
      sums[sum + 3]! += u * y;
      sums[sum + 4]! += u * ty;
      square += y * y;
    }
  }
  return square;
}

/** Σ over the bins of what each holds times e^(ikφ), φ its phase. */
function harmonicsOf(
  sums: Float64Array,
  bins: number,
  orders: number,
): { readonly plain: Float64Array; readonly timed: Float64Array } {
  const [y, ty, tty, uy, tuy] = lineSums(sums, bins);
  const plain = new Float64Array(2 * orders + 1);
  const timed = new Float64Array(2 * orders + 1);
  plain[0] = y.re[0]!;
  timed[0] = uy.re[0]!;
  for (let k = 1; k <= orders; k++) {
    // The parabola nearest to cos zt and the line nearest to sin zt over |t| ≤ ½, by least squares.
    const z2 = ((2 * Math.PI * k) / bins) ** 2;
    const level = 1 - z2 ** 2 / 4480;
    const bend = -z2 / 2 + z2 ** 2 / 112;
    const flat = 1 - z2 / 24;
    const slope = Math.sqrt(z2) * (1 - z2 / 40 + z2 ** 2 / 4480);
    // The middle of a bin stands half a bin from its start. Of Σ y·e^(−ikφ) the sines are the negative.
    const [c, s] = [cos((Math.PI * k) / bins), sin((Math.PI * k) / bins)];
    const put = (into: Float64Array, re: number, im: number): void => {
      into[k] = c * re - s * im;
      into[orders + k] = s * re + c * im;
    };
    put(
      plain,
      level * y.re[k]! + bend * tty.re[k]! + slope * ty.im[k]!,
      slope * ty.re[k]! - level * y.im[k]! - bend * tty.im[k]!,
    );
    put(timed, flat * uy.re[k]! + slope * tuy.im[k]!, slope * tuy.re[k]! - flat * uy.im[k]!);
  }
  return { plain, timed };
}

/** Σ over the bins b of each of their five sums times e^(−2πikb/B). */
function lineSums(sums: Float64Array, bins: number): [Spectrum, Spectrum, Spectrum, Spectrum, Spectrum] {
  const { spectrum } = fourier(bins);
  const linesOf = (which: number): Spectrum => {
    const one = new Float64Array(bins);
    for (let bin = 0; bin < bins; bin++) one[bin] = sums[SUMS * bin + which]!;
    return spectrum(one);
  };
  return [linesOf(0), linesOf(1), linesOf(2), linesOf(3), linesOf(4)];
}
