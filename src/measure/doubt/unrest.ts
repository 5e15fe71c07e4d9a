import { atan2, cos, hypot, sin } from '../../base/elementary.ts';
import { type CycleOrders, cycleOrders } from '../../signal/cycleOrders.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import { type BesideLine, besideFundamental } from './besideFundamental.ts';

/**
 * What a record does that its fit does not know of: cycles that differ, noise that is not white, orders that run at
 * a frequency of their own, a line close to the fundamental. Nothing of it in white noise.
 */
export interface Unrest {
  /** Shape K: by how much the noise around each order stands above that which the fit assumes, ≥ 1. */
  readonly noiseRatio: Float64Array;
  /**
   * Standard deviation of the mean of the fundamental's size, relative, from cycles that differ; 0 where noise
   * explains it.
   */
  readonly sizeRatio: number;
  readonly shape: ShapeUnrest;
  /**
   * Sum of the squares of those orders of the fit, peak values in U, that don't keep step with the fundamental: a line
   * beside an order, which is then none of its harmonics.
   */
  readonly astray: number;
  /** Of the frequency, radians a sample, from orders that disagree about it and from what stands beside the fundamental. */
  readonly omegaDeviation: number;
  /** The line close to the fundamental that explains best what is left there; null where nothing is. */
  readonly line: BesideLine | null;
}

/** Orders 2 to K from cycle to cycle, beside a fundamental of each cycle's own size and phase; peak values, in U. */
interface ShapeUnrest {
  /** Standard deviation of their mean, the length of the vector of all orders; 0 where noise explains it. */
  readonly length: number;
  /** The same along the mean's own direction. */
  readonly along: number;
  /** Of `along`. */
  readonly degreesOfFreedom: number;
  /** Square of what the mean takes in of changes that come and go. */
  readonly gained: number;
  /** Square of what the mean loses of an order that turns slowly over the record. */
  readonly lost: number;
}

const STEADY: ShapeUnrest = { length: 0, along: 0, degreesOfFreedom: 1, gained: 0, lost: 0 };

/** Orders on either side that tell the noise at one. */
const NEIGHBOURS = 4;

/**
 * Cycles held against each other: the orders of each beside those of the fit.
 *
 * @remarks Every part is nothing unless it stands clear of what white noise of the fit's residual would show, so
 * that a clean record keeps the doubt of its noise.
 */
export function unrest(fit: HarmonicFit): Unrest {
  const orders = fit.cosine.length;
  const cells = cycleOrders(fit);
  const noiseRatio = cells === null ? new Float64Array(orders).fill(1) : noiseRatios(fit, cells);
  const beside = besideFundamental(fit, noiseRatio[0]!);
  const disagreement = cells === null ? 0 : frequencyDisagreement(fit, cells, noiseRatio);
  return {
    noiseRatio,
    sizeRatio: cells === null ? 0 : sizeScatter(fit, cells, noiseRatio[0]!),
    shape: cells === null ? STEADY : shapeScatter(fit, cells),
    astray: cells === null ? 0 : astrayOrders(fit, cells, noiseRatio),
    omegaDeviation: hypot(beside.omegaDeviation, disagreement),
    line: beside.line,
  };
}

/** Variance of a complex coefficient (cosine and sine together) that the fit assumes of each order's mean. */
function whiteVariance({ residualDeviation, count }: HarmonicFit): number {
  return (4 * residualDeviation ** 2) / count;
}

/** s² of each order between the cells, as the variance of the mean over the record: cosine and sine together. */
function meanVariances({ cosine, sine, meanShare }: CycleOrders): Float64Array {
  const count = cosine.length;
  return cosine[0]!.map((_, k) => {
    let [meanC, meanS] = [0, 0];
    for (let i = 0; i < count; i++) {
      meanC += cosine[i]![k]! / count;
      meanS += sine[i]![k]! / count;
    }
    let square = 0;
    for (let i = 0; i < count; i++) square += (cosine[i]![k]! - meanC) ** 2 + (sine[i]![k]! - meanS) ** 2;
    return (meanShare * square) / (count - 1);
  });
}

/** Whether order k + 1 stands above four of its own standard deviations. */
export function isHeard({ cosine, sine, deviation }: HarmonicFit, k: number, noiseRatio: number): boolean {
  return hypot(cosine[k]!, sine[k]!) > 4 * noiseRatio * hypot(deviation.cosine[k]!, deviation.sine[k]!);
}

/**
 * The mean over neighbouring orders without the two largest, which may be lines or orders that move, and without what
 * leaving those out takes from it.
 */
function noiseRatios(fit: HarmonicFit, cells: CycleOrders): Float64Array {
  const variances = meanVariances(cells);
  const white = whiteVariance(fit);
  const degrees = 2 * (cells.cosine.length - 1);
  return variances.map((_, k) => {
    const from = Math.max(0, Math.min(k - NEIGHBOURS, variances.length - 2 * NEIGHBOURS - 1));
    const near = [...variances.subarray(from, from + 2 * NEIGHBOURS + 1)].sort((a, b) => a - b);
    const kept = near.length > 4 ? near.slice(0, -2) : near;
    const mean = kept.reduce((sum, x) => sum + x, 0) / kept.length / keptShare(degrees);
    const deviations = Math.sqrt(2 / (degrees * kept.length));
    // Four of its own deviations above white noise: one chance in some ten thousand.
    return white > 0 && mean > (1 + 4 * deviations) * white ? Math.sqrt(mean / white) : 1;
  });
}

/**
 * Mean of the seven smallest of nine variances over the true one: 0.620 for two degrees of freedom (order statistics of
 * the exponential distribution), and as many normal deviations below one as the two largest of nine stand above, 0.345,
 * for many. Between them within 1 %, as 400,000 draws show.
 */
function keptShare(degrees: number): number {
  return 1 - 0.345 * Math.sqrt(2 / degrees) - 0.07 / degrees;
}

/** Beyond four times the variance of noise the fundamental's size differs from cycle to cycle. */
function sizeScatter(fit: HarmonicFit, cells: CycleOrders, noiseRatio: number): number {
  const [c, s] = [fit.cosine[0]!, fit.sine[0]!];
  const square = c * c + s * s;
  const gains = cells.cosine.map((cosine, i) => (cosine[0]! * c + cells.sine[i]![0]! * s) / square);
  const variance = cells.meanShare * varianceOf(gains);
  const noise = (whiteVariance(fit) * noiseRatio ** 2) / 2 / square;
  return variance > 4 * noise ? Math.sqrt(variance - noise) : 0;
}

function varianceOf(values: readonly number[]): number {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1);
}

/**
 * Cycles that differ without order part their mean's variance; cycles that change slowly do not, and the more the less
 * they change from one to the next beside what they change in all (von Neumann's ratio): then the variance is up to
 * that of a single cycle.
 *
 * @see J. von Neumann, Ann. Math. Statist. 12(4), 1941, 367-395 (from memory).
 */
function shapeScatter(fit: HarmonicFit, cells: CycleOrders): ShapeUnrest {
  const orders = fit.cosine.length;
  const count = cells.cosine.length;
  const own = shapesOf(fit, cells);
  const mean = own[0]!.map((_, k) => own.reduce((sum, shape) => sum + shape[k]!, 0) / count);
  let [square, change, harmonics] = [0, 0, 0];
  const fitted = Float64Array.of(...fit.cosine.subarray(1), ...fit.sine.subarray(1));
  const alongs = own.map((shape, i) => {
    let along = 0;
    for (let k = 0; k < shape.length; k++) {
      square += (shape[k]! - mean[k]!) ** 2;
      if (i > 0) change += (shape[k]! - own[i - 1]![k]!) ** 2;
      along += shape[k]! * fitted[k]!;
    }
    return along;
  });
  for (const x of fitted) harmonics += x * x;
  const noise = (whiteVariance(fit) * (orders - 1)) / cells.meanShare;
  const variance = square / (count - 1);
  const degrees = 2 * (orders - 1) * (count - 1);
  if (orders < 2 || !(variance > (1 + 5 * Math.sqrt(2 / degrees)) * noise)) return STEADY;
  const excess = variance - noise;
  const changed = Math.max(0, change / (count - 1) / cells.changeShare - noise);
  const least = cells.meanShare;
  const unlike = Math.max(least, Math.min(1, changed / excess));
  return {
    length: Math.sqrt((least / unlike) * excess),
    along: harmonics > 0 ? Math.sqrt(((least / unlike) * varianceOf(alongs)) / harmonics) : 0,
    degreesOfFreedom: count - 1,
    gained: least * unlike * excess,
    lost: (1 - unlike) * excess,
  };
}

/** Cosines, then sines, of orders 2 to K that each cell adds beside a change of its fundamental's size and phase. */
function shapesOf(fit: HarmonicFit, { cosine, sine }: CycleOrders): readonly Float64Array[] {
  const [c1, s1] = [fit.cosine[0]!, fit.sine[0]!];
  const square = c1 * c1 + s1 * s1;
  const above = fit.cosine.length - 1;
  return cosine.map((c, i) => {
    const s = sine[i]!;
    const size = (c[0]! * c1 + s[0]! * s1) / square;
    // sin(x + φ) turned forward by θ: its cosine part gains θ·sine, its sine part −θ·cosine.
    const turn = (c[0]! * s1 - s[0]! * c1) / square;
    const shape = new Float64Array(2 * above);
    for (let k = 1; k <= above; k++) {
      shape[k - 1] = c[k]! - size * fit.cosine[k]! - (k + 1) * turn * fit.sine[k]!;
      shape[above + k - 1] = s[k]! - size * fit.sine[k]! + (k + 1) * turn * fit.cosine[k]!;
    }
    return shape;
  });
}

/** Radians over the record: an order that turns by less may be a harmonic which a load has moved. No source. */
const LEAST_TURN = 0.15;
/** Of an order's power in the cells: what a line of a steady turn explains of it. */
const ONE_LINE = 0.9;

/**
 * Orders whose phase, less what the fundamental's own does to it, runs evenly from cell to cell and further than noise
 * takes it: lines of a frequency of their own.
 */
function astrayOrders(
  fit: HarmonicFit,
  { cosine, sine, centres, meanShare }: CycleOrders,
  noiseRatio: Float64Array,
): number {
  const [c1, s1] = [fit.cosine[0]!, fit.sine[0]!];
  const fundamental = c1 * c1 + s1 * s1;
  const turns = cosine.map((c, i) => (c[0]! * s1 - sine[i]![0]! * c1) / fundamental);
  const last = centres.length - 1;
  const span = centres[last]! - centres[0]!;
  let astray = 0;
  for (let k = 1; k < fit.cosine.length; k++) {
    if (!isHeard(fit, k, noiseRatio[k]!)) continue;
    // sin(x + φ) forward by θ is c + i·s turned by −θ: each cell's order turned back by what the fundamental went.
    const [re, im] = [new Float64Array(last + 1), new Float64Array(last + 1)];
    let power = 0;
    for (let i = 0; i <= last; i++) {
      const [c, s] = [fit.cosine[k]! + cosine[i]![k]!, fit.sine[k]! + sine[i]![k]!];
      const [turnRe, turnIm] = [cos((k + 1) * turns[i]!), sin((k + 1) * turns[i]!)];
      re[i] = c * turnRe - s * turnIm;
      im[i] = s * turnRe + c * turnIm;
      power += c * c + s * s;
    }
    let [stepRe, stepIm] = [0, 0];
    for (let i = 0; i < last; i++) {
      stepRe += re[i]! * re[i + 1]! + im[i]! * im[i + 1]!;
      stepIm += re[i]! * im[i + 1]! - im[i]! * re[i + 1]!;
    }
    const perCell = atan2(stepIm, stepRe);
    let [sumRe, sumIm] = [0, 0];
    for (let i = 0; i <= last; i++) {
      const [backRe, backIm] = [cos(perCell * i), -sin(perCell * i)];
      sumRe += re[i]! * backRe - im[i]! * backIm;
      sumIm += re[i]! * backIm + im[i]! * backRe;
    }
    const explained = (sumRe * sumRe + sumIm * sumIm) / (last + 1) / power;
    // Of a cell's phase; the first and the last set the turn over the record.
    const cellNoise = (whiteVariance(fit) * noiseRatio[k]! ** 2) / 2 / meanShare;
    const deviation = Math.sqrt((2 * cellNoise * (last + 1)) / power);
    const turn = Math.abs(perCell) * last;
    if (explained > ONE_LINE && turn > Math.max(LEAST_TURN * (span / fit.residual.length), 4 * deviation)) {
      astray += fit.cosine[k]! ** 2 + fit.sine[k]! ** 2;
    }
  }
  return astray;
}

/**
 * How far the joint frequency may be off where the orders do not agree about it: each order's own frequency from the
 * run of its phase over the cells, weighed as in the fit by (k·amplitude)².
 */
function frequencyDisagreement(
  fit: HarmonicFit,
  { cosine, sine, centres }: CycleOrders,
  noiseRatio: Float64Array,
): number {
  const spread = centres.reduce((sum, t) => sum + t * t, 0);
  const [c1, s1] = [fit.cosine[0]!, fit.sine[0]!];
  let [weights, square, chi, count, ofFundamental] = [0, 0, 0, 0, 0];
  for (let k = 0; k < fit.cosine.length; k++) {
    if (!isHeard(fit, k, noiseRatio[k]!)) continue;
    const [c, s] = k === 0 ? [c1, s1] : [fit.cosine[k]!, fit.sine[k]!];
    const power = c * c + s * s;
    let run = 0;
    for (let i = 0; i < centres.length; i++) {
      run += (centres[i]! * (cosine[i]![k]! * s - sine[i]![k]! * c)) / power / spread;
    }
    const weight = (k + 1) ** 2 * power;
    weights += weight;
    if (k === 0) {
      ofFundamental = Math.abs(run);
      continue;
    }
    const off = run / (k + 1);
    square += (weight * off) ** 2;
    chi += (weight * off * off) / noiseRatio[k]! ** 2;
    count++;
  }
  if (count === 0) return 0;
  const ofWhite = fit.deviation.omega ** 2 * weights;
  // 4 of χ²'s own deviations beyond its mean.
  if (!(chi > (count + 4 * Math.sqrt(2 * count)) * ofWhite)) return 0;
  // The fundamental's own is then the better one: half as much again holds it.
  return Math.max(Math.sqrt(square) / weights, 0.75 * ofFundamental);
}
