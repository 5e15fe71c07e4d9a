import type { HarmonicFit } from '../signal/harmonicFit.ts';
import { seriesAt } from '../signal/harmonicSeries.ts';
import type { CycleWeights } from '../signal/wholeCycleWeights.ts';

/** Means over whole cycles, in U and U². */
export interface CycleMoments {
  readonly mean: number;
  /** Of v². */
  readonly square: number;
  /** Of |v|. */
  readonly rectified: number;
  /** Of |v − mean|. */
  readonly acRectified: number;
}

/** Samples of the residual that are worked out at once. */
const RUN = 2 ** 12;

/**
 * The means that a wave's RMS, form factor and the like are made of, each the mean of the fitted series plus the
 * weighted mean of what the samples add to it, as `wholeCycleMean` has it, in two passes over the record.
 *
 * @param samples - shape N, of the fit; a missing sample (NaN) is replaced by the series.
 */
export function cycleMoments(samples: Float64Array, fit: HarmonicFit, weights: CycleWeights): CycleMoments {
  let [mean, square, rectified] = [0, 0, 0];
  const { length } = samples;
  const { residual } = fit;
  const { at, flat, ramp } = weights;
  const room = new Float64Array(RUN);
  for (let from = 0; from < length; from += RUN) {
    const left = residual.stretch(from, Math.min(length, from + RUN), room);
    for (let i = 0; i < left.length; i++) {
      const apart = left[i]!;
      if (Number.isNaN(apart)) continue;
      const n = from + i;
      const sample = samples[n]!;
      const series = sample - apart;
      const weight = n < ramp || n >= length - ramp ? at(n) : flat;
      mean += weight * (sample - series);
      square += weight * (sample * sample - series * series);
      rectified += weight * (Math.abs(sample) - Math.abs(series));
    }
  }
  mean += fit.mean;
  square += fit.mean ** 2;
  for (let k = 0; k < fit.cosine.length; k++) square += (fit.cosine[k]! ** 2 + fit.sine[k]! ** 2) / 2;
  let acRectified = 0;
  for (let from = 0; from < length; from += RUN) {
    const left = residual.stretch(from, Math.min(length, from + RUN), room);
    for (let i = 0; i < left.length; i++) {
      const apart = left[i]!;
      if (Number.isNaN(apart)) continue;
      const n = from + i;
      const above = samples[n]! - mean;
      const weight = n < ramp || n >= length - ramp ? at(n) : flat;
      acRectified += weight * (Math.abs(above) - Math.abs(above - apart));
    }
  }
  return {
    mean,
    square,
    rectified: rectified + rectifiedSeries(fit, 0),
    acRectified: acRectified + rectifiedSeries(fit, mean),
  };
}

/** Mean of |series − level| over a cycle: 4096 points leave an error of 1e-7 where it has kinks. */
function rectifiedSeries(fit: HarmonicFit, level: number): number {
  const points = 4096;
  let sum = 0;
  for (let n = 0; n < points; n++) sum += Math.abs(seriesAt(fit, (2 * Math.PI * n) / points) - level);
  return sum / points;
}
