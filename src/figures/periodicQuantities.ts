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
  /** Null for a smooth wave, or where no edge is whole. */
  readonly edge: Edges | null;
  /** Sample count that a whole-cycle mean's noise averages over: 1 / Σ w². */
  readonly averagedSamples: number;
}

export function periodicQuantities({ samples, periodic }: PeriodicRecord): PeriodicQuantities {
  const { extent, fit, cycle, levels, periodSamples } = periodic;
  const weights = wholeCycleWeights(samples.length, periodSamples);
  const { mean, square, rectified, acRectified } = cycleMoments(samples, fit, weights);
  const rms = Math.sqrt(Math.max(0, square));
  const { max, min } = extent;
  return {
    rms,
    mean,
    acRms: Math.sqrt(Math.max(0, rms * rms - mean * mean)),
    rectified,
    acRectified,
    peak: cycle.reduce((high, v) => Math.max(high, v), Number.NEGATIVE_INFINITY),
    trough: cycle.reduce((low, v) => Math.min(low, v), Number.POSITIVE_INFINITY),
    max,
    min,
    fundamental: hypot(fit.cosine[0]!, fit.sine[0]!) / Math.SQRT2,
    dwellRatio: dwell(samples, weights, levels),
    edge: levels.length > 0 ? edges(samples, levels, samples.length / periodSamples) : null,
    averagedSamples: weights.averagedSamples,
  };
}
