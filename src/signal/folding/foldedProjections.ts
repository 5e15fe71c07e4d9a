import { cos } from '../../base/elementary/cos.ts';
import { log2 } from '../../base/elementary/log2.ts';
import { sin } from '../../base/elementary/sin.ts';
import { RUN_SAMPLES } from '../longRecord.ts';

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
  const plain = new Float64Array(2 * orders + 1);
  const timed = new Float64Array(2 * orders + 1);
  for (let bin = 0; bin < bins; bin++) {
    plain[0]! += sums[SUMS * bin]!;
    timed[0]! += sums[SUMS * bin + 3]!;
  }
  // Half bins, a power of two of them: the middle of bin b stands 2b + 1 of them from the start.
  const cosines = Float64Array.from({ length: 2 * bins }, (_, i) => cos((Math.PI * i) / bins));
  const sines = Float64Array.from({ length: 2 * bins }, (_, i) => sin((Math.PI * i) / bins));
  for (let k = 1; k <= orders; k++) {
    const order = harmonicOf(sums, k, cosines, sines);
    plain[k] = order.plain.cosine;
    plain[orders + k] = order.plain.sine;
    timed[k] = order.timed.cosine;
    timed[orders + k] = order.timed.sine;
  }
  return { plain, timed };
}

interface Projection {
  readonly cosine: number;
  readonly sine: number;
}

/** Order k. @param cosines - and sines of 2·bins half bins. */
function harmonicOf(
  sums: Float64Array,
  k: number,
  cosines: Float64Array,
  sines: Float64Array,
): { readonly plain: Projection; readonly timed: Projection } {
  const halfBins = cosines.length;
  // The parabola nearest to cos zt and the line nearest to sin zt over |t| ≤ ½, by least squares.
  const z2 = ((4 * Math.PI * k) / halfBins) ** 2;
  const level = 1 - z2 ** 2 / 4480;
  const bend = -z2 / 2 + z2 ** 2 / 112;
  const flat = 1 - z2 / 24;
  const slope = Math.sqrt(z2) * (1 - z2 / 40 + z2 ** 2 / 4480);
  let cosine = 0;
  let sine = 0;
  let timedCosine = 0;
  let timedSine = 0;
  for (let at = 0, turn = k; at < sums.length; at += SUMS, turn = (turn + 2 * k) & (halfBins - 1)) {
    const c = cosines[turn]!;
    const s = sines[turn]!;
    const even = level * sums[at]! + bend * sums[at + 2]!;
    const odd = slope * sums[at + 1]!;
    cosine += c * even - s * odd;
    sine += s * even + c * odd;
    const timedEven = flat * sums[at + 3]!;
    const timedOdd = slope * sums[at + 4]!;
    timedCosine += c * timedEven - s * timedOdd;
    timedSine += s * timedEven + c * timedOdd;
  }
  return { plain: { cosine, sine }, timed: { cosine: timedCosine, sine: timedSine } };
}
