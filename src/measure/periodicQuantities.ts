import { hypot } from '../base/elementary.ts';
import type { AmplitudeLevel } from '../signal/amplitudeLevels.ts';
import type { HarmonicFit } from '../signal/harmonicFit.ts';
import { seriesAt } from '../signal/harmonicSeries.ts';
import { RUN_SAMPLES } from '../signal/recordParts.ts';
import { type CycleWeights, wholeCycleWeights } from '../signal/wholeCycleWeights.ts';
import { type Edges, edges } from './edges.ts';
import type { PeriodicWave } from './measuredWave.ts';

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

/** @param samples - shape N, those that `periodic` was fitted to. */
export function periodicQuantities(samples: Float64Array, periodic: PeriodicWave): PeriodicQuantities {
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

/** Means over whole cycles, in U and U². */
interface CycleMoments {
  readonly mean: number;
  /** Of v². */
  readonly square: number;
  /** Of |v|. */
  readonly rectified: number;
  /** Of |v − mean|. */
  readonly acRectified: number;
}

/**
 * The means that a wave's RMS, form factor and the like are made of, each the mean of the fitted series plus the
 * weighted mean of what the samples add to it, in two passes over the record.
 *
 * ⟨f(v)⟩ = ⟨f(series)⟩ + Σ w·(f(v) − f(series))
 *
 * @param samples - shape N, of the fit; a missing sample (NaN) is replaced by the series.
 */
function cycleMoments(samples: Float64Array, fit: HarmonicFit, weights: CycleWeights): CycleMoments {
  const { length } = samples;
  const [left, weight] = [new Float64Array(RUN_SAMPLES), new Float64Array(RUN_SAMPLES)];
  const pass = (add: (run: MomentRun) => void): void => {
    for (let from = 0; from < length; from += RUN_SAMPLES) {
      const to = Math.min(length, from + RUN_SAMPLES);
      add({
        samples: samples.subarray(from, to),
        residual: fit.residual.stretch(from, to, left),
        weights: weights.stretch(from, to, weight),
      });
    }
  };
  const sums = new Float64Array(3);
  pass((run) => addMoments(sums, run));
  const mean = fit.mean + sums[0]!;
  let square = fit.mean ** 2 + sums[1]!;
  for (let k = 0; k < fit.cosine.length; k++) square += (fit.cosine[k]! ** 2 + fit.sine[k]! ** 2) / 2;
  let acRectified = 0;
  pass((run) => {
    acRectified += addedRectified(run, mean);
  });
  return {
    mean,
    square,
    rectified: sums[2]! + rectifiedSeries(fit, 0),
    acRectified: acRectified + rectifiedSeries(fit, mean),
  };
}

interface MomentRun {
  readonly samples: Float64Array;
  readonly residual: Float64Array;
  readonly weights: Float64Array;
}

/** What the samples add to the means of the series, of its square and of its size. */
function addMoments(sums: Float64Array, { samples, residual, weights }: MomentRun): void {
  let mean = 0;
  let square = 0;
  let rectified = 0;
  for (let i = 0; i < samples.length; i++) {
    const apart = residual[i]!;
    if (Number.isNaN(apart)) continue;
    const sample = samples[i]!;
    const series = sample - apart;
    const weight = weights[i]!;
    mean += weight * apart;
    square += weight * apart * (sample + series);
    rectified += weight * (Math.abs(sample) - Math.abs(series));
  }
  sums[0]! += mean;
  sums[1]! += square;
  sums[2]! += rectified;
}

/** What they add to the mean size of the series less a level. */
function addedRectified({ samples, residual, weights }: MomentRun, level: number): number {
  let rectified = 0;
  for (let i = 0; i < samples.length; i++) {
    const apart = residual[i]!;
    if (Number.isNaN(apart)) continue;
    const above = samples[i]! - level;
    rectified += weights[i]! * (Math.abs(above) - Math.abs(above - apart));
  }
  return rectified;
}

/** Mean of |series − level| over a cycle: 4096 points leave an error of 1e-7 where it has kinks. */
function rectifiedSeries(fit: HarmonicFit, level: number): number {
  const points = 4096;
  let sum = 0;
  for (let n = 0; n < points; n++) sum += Math.abs(seriesAt(fit, (2 * Math.PI * n) / points) - level);
  return sum / points;
}

/**
 * Share of the cycle for which a stepped wave rests at its middle level, half-way crossings as the borders.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param weights - of `wholeCycleWeights`.
 * @param levels - ascending; only an odd number of them has a middle.
 * @returns 0 to 1; 0 for a smooth wave or an even number of levels.
 */
function dwell(samples: Float64Array, weights: CycleWeights, levels: readonly AmplitudeLevel[]): number {
  if (levels.length % 2 === 0) return 0;
  const middle = levels.length >> 1;
  const low = (levels[middle - 1]!.value + levels[middle]!.value) / 2;
  const high = (levels[middle]!.value + levels[middle + 1]!.value) / 2;
  let resting = 0;
  let seen = 0;
  for (let n = 0; n < samples.length; n++) {
    if (Number.isNaN(samples[n]!)) continue;
    const weight = weights.at(n);
    seen += weight;
    if (samples[n]! > low && samples[n]! < high) resting += weight;
  }
  return resting / seen;
}
