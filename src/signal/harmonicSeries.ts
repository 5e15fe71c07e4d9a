import { cos } from '../base/elementary/cos.ts';
import { sin } from '../base/elementary/sin.ts';

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
 * @param series - K ≥ 1 orders.
 * @param points - how many, ≥ 1.
 * @param phaseRad - added to every phase: where in the cycle the first point stands.
 * @returns shape points, in the unit of the series.
 * @example sampleCycle({ mean: 0, cosine: Float64Array.of(1), sine: Float64Array.of(0) }, 2) // 1, -1
 */
export function sampleCycle(series: HarmonicSeries, points: number, phaseRad = 0): Float64Array {
  const cycle = new Float64Array(points);
  for (let n = 0; n < points; n++) cycle[n] = seriesAt(series, (2 * Math.PI * n) / points + phaseRad);
  return cycle;
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
