import { seriesAt } from '../signal/harmonicSeries.ts';
import { moments } from '../signal/moments.ts';
import { wholeCycleWeights } from '../signal/wholeCycleWeights.ts';
import { dwell } from './dwell.ts';
import { type Edges, edges } from './edges.ts';
import type { PeriodicRecord } from './measuredWave.ts';
import { wholeCycleMean } from './wholeCycleMean.ts';

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
  const { fit, cycle, levels, periodSamples } = periodic;
  const weights = wholeCycleWeights(samples.length, periodSamples);
  const over = (f: (v: number) => number, seriesMean: number): number =>
    wholeCycleMean(samples, fit, weights, f, seriesMean);
  let seriesSquare = fit.mean ** 2;
  for (let k = 0; k < fit.cosine.length; k++) seriesSquare += (fit.cosine[k]! ** 2 + fit.sine[k]! ** 2) / 2;
  const rms = Math.sqrt(
    Math.max(
      0,
      over((v) => v * v, seriesSquare),
    ),
  );
  const mean = over((v) => v, fit.mean);
  const rectifiedAbout = (level: number): number =>
    over(
      (v) => Math.abs(v - level),
      meanOfSeries(fit, (v) => Math.abs(v - level)),
    );
  const { max, min } = moments(samples);
  return {
    rms,
    mean,
    acRms: Math.sqrt(Math.max(0, rms * rms - mean * mean)),
    rectified: rectifiedAbout(0),
    acRectified: rectifiedAbout(mean),
    peak: cycle.reduce((high, v) => Math.max(high, v), Number.NEGATIVE_INFINITY),
    trough: cycle.reduce((low, v) => Math.min(low, v), Number.POSITIVE_INFINITY),
    max,
    min,
    fundamental: Math.hypot(fit.cosine[0]!, fit.sine[0]!) / Math.SQRT2,
    dwellRatio: dwell(samples, weights, levels),
    edge: levels.length > 0 ? edges(samples, levels, samples.length / periodSamples) : null,
    averagedSamples: 1 / weights.reduce((sum, w) => sum + w * w, 0),
  };
}

/** Mean of a function of the series over a cycle: 4096 points leave an error of 1e-7 where it has kinks. */
function meanOfSeries(series: PeriodicRecord['periodic']['fit'], f: (value: number) => number): number {
  const points = 4096;
  let sum = 0;
  for (let n = 0; n < points; n++) sum += f(seriesAt(series, (2 * Math.PI * n) / points));
  return sum / points;
}
