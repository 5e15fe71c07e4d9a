import { cos, sin } from '../base/elementary.ts';
import { fourier } from './spectrum.ts';

/**
 * v(u) = mean + Σ (cosine[k−1]·cos kωu + sine[k−1]·sin kωu), k = 1 … K; u in samples from the record's centre.
 */
export interface HarmonicSeries {
  readonly mean: number;
  /** Shape K. */
  readonly cosine: Float64Array;
  /** Shape K. */
  readonly sine: Float64Array;
}

/**
 * One cycle of a harmonic series at evenly spaced phases, the first at phase 0.
 *
 * @param series - 1 ≤ K < points/2 orders.
 * @param points - how many, a power of two ≥ 4.
 * @param phaseRad - added to every phase: where in the cycle the first point stands.
 * @returns shape points, in the unit of the series.
 * @throws RangeError where the points are too few for the orders, or no power of two.
 * @example sampleCycle({ mean: 0, cosine: Float64Array.of(1), sine: Float64Array.of(0) }, 4) // 1, 0, -1, 0
 */
export function sampleCycle(series: HarmonicSeries, points: number, phaseRad = 0): Float64Array {
  const { mean, cosine, sine } = series;
  const orders = cosine.length;
  if (orders >= points / 2) throw new RangeError(`${points} points can't show ${orders} orders`);
  const re = new Float64Array(points / 2 + 1);
  const im = new Float64Array(points / 2 + 1);
  re[0] = points * mean;
  for (let k = 1; k <= orders; k++) {
    const [turnRe, turnIm] = [cos(k * phaseRad), sin(k * phaseRad)];
    const [c, s] = [cosine[k - 1]!, sine[k - 1]!];
    // A·cos(kφ + kα) as a line of the transform.
    re[k] = (points / 2) * (c * turnRe + s * turnIm);
    im[k] = (points / 2) * (c * turnIm - s * turnRe);
  }
  return fourier(points).inverse({ re, im });
}

/** The series at one phase ωu in radians. */
export function seriesAt(series: HarmonicSeries, phaseRad: number): number {
  // Rotating e^(ikφ) from order to order costs one cosine and one sine a point; its error grows as K ulp.
  const stepRe = cos(phaseRad);
  const stepIm = sin(phaseRad);
  let re = 1;
  let im = 0;
  let value = series.mean;
  for (let k = 0; k < series.cosine.length; k++) {
    const nextRe = re * stepRe - im * stepIm;
    im = re * stepIm + im * stepRe;
    re = nextRe;
    value += series.cosine[k]! * re + series.sine[k]! * im;
  }
  return value;
}
