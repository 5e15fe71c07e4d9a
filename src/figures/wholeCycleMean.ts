import type { HarmonicFit } from '../signal/fitHarmonics.ts';

/**
 * Mean of a function of the wave over whole cycles, taken in time: the exact mean of the fitted series plus
 * the weighted mean of what the samples add to it. The record need hold no whole number of samples a cycle.
 *
 * ⟨f(v)⟩ = ⟨f(series)⟩ + Σ w·(f(v) − f(series))
 *
 * @param samples - shape N, of the fit; a missing sample (NaN) is replaced by the series.
 * @param weights - shape N, of `wholeCycleWeights`.
 * @param seriesMean - ⟨f(series)⟩ over a cycle.
 */
export function wholeCycleMean(
  samples: Float64Array,
  fit: HarmonicFit,
  weights: Float64Array,
  f: (value: number) => number,
  seriesMean: number,
): number {
  let correction = 0;
  for (let n = 0; n < samples.length; n++) {
    const residual = fit.residual[n]!;
    if (Number.isNaN(residual)) continue;
    correction += weights[n]! * (f(samples[n]!) - f(samples[n]! - residual));
  }
  return seriesMean + correction;
}
