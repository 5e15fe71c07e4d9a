import { hypot } from '../base/elementary/hypot.ts';
import { wholeCycleWeights } from '../signal/wholeCycleWeights.ts';
import { cycleMoments } from './cycleMoments.ts';
import { dwell } from './dwell.ts';
import { type Edges, edges } from './edges.ts';
import type { PeriodicRecord } from './measuredWave.ts';

/** The numbers that figures are made of, in U unless said; definitions in the README. */
export interface PeriodicQuantities {
  readonly rms: number;
  readonly mean: number;
  /** RMS without the mean. */
  readonly acRms: number;
  /** Mean of |v|. */
  readonly rectified: number;
  /** Mean of |v − mean|. */
  readonly acRectified: number;
  readonly peak: number;
  readonly trough: number;
  readonly max: number;
  readonly min: number;
  /** RMS of the fundamental. */
  readonly fundamental: number;
  /** Share of time at the middle level. */
  readonly dwellRatio: number;
  /** Share of time at zero, whatever the levels: there |v| is the size of noise, offset and rounding. */
  readonly restRatio: number;
  /** Null for a smooth wave, or where no edge is whole. */
  readonly edge: Edges | null;
  /** Sample count that a whole-cycle mean's noise averages over: 1 / Σ w². */
  readonly averagedSamples: number;
}

export function periodicQuantities({ samples, periodic }: PeriodicRecord): PeriodicQuantities {
  const { extent, fit, cycle, levels, periodSamples, extremes } = periodic;
  const weights = wholeCycleWeights(samples.length, periodSamples);
  const { mean, square, rectified, acRectified } = cycleMoments(samples, fit, weights);
  const rms = Math.sqrt(Math.max(0, square));
  const { max, min } = extent;
  const dwellRatio = dwell(samples, weights, levels);
  // A smooth wave crosses zero and is gone; one with corners may stay.
  const atZero = Math.max(REST_DEVIATIONS * (extremes?.noise ?? periodic.noise), REST_SHARE * (max - min));
  const resting = cycle.filter((v) => Math.abs(v) <= atZero).length / cycle.length;
  const restRatio = dwellRatio > 0 ? dwellRatio : resting;
  return {
    rms,
    mean,
    acRms: Math.sqrt(Math.max(0, rms * rms - mean * mean)),
    rectified,
    acRectified,
    peak: extremes?.peak.value ?? cycle.reduce((high, v) => Math.max(high, v), Number.NEGATIVE_INFINITY),
    trough: extremes?.trough.value ?? cycle.reduce((low, v) => Math.min(low, v), Number.POSITIVE_INFINITY),
    max,
    min,
    fundamental: hypot(fit.cosine[0]!, fit.sine[0]!) / Math.SQRT2,
    dwellRatio,
    restRatio,
    edge: levels.length > 0 ? edges(samples, levels, samples.length / periodSamples) : null,
    averagedSamples: weights.averagedSamples,
  };
}

/** Standard deviations of the noise within which a wave rests at zero. */
const REST_DEVIATIONS = 3;
/** Of its range. */
const REST_SHARE = 0.02;
