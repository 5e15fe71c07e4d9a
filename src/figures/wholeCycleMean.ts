import type { HarmonicFit } from '../signal/harmonicFit.ts';
import type { CycleWeights } from '../signal/wholeCycleWeights.ts';

/** Samples of the residual that are worked out at once. */
const RUN = 2 ** 12;

/**
 * Mean of a function of the wave over whole cycles, taken in time: the exact mean of the fitted series plus
 * the weighted mean of what the samples add to it. The record need hold no whole number of samples a cycle.
 *
 * ⟨f(v)⟩ = ⟨f(series)⟩ + Σ w·(f(v) − f(series))
 *
 * @param samples - shape N, of the fit; a missing sample (NaN) is replaced by the series.
 * @param weights - of `wholeCycleWeights`.
 * @param seriesMean - ⟨f(series)⟩ over a cycle.
 */
export function wholeCycleMean(
  samples: Float64Array,
  fit: HarmonicFit,
  weights: CycleWeights,
  f: (value: number) => number,
  seriesMean: number,
): number {
  let correction = 0;
  const room = new Float64Array(RUN);
  for (let from = 0; from < samples.length; from += RUN) {
    const left = fit.residual.stretch(from, Math.min(samples.length, from + RUN), room);
    for (let i = 0; i < left.length; i++) {
      const residual = left[i]!;
      if (Number.isNaN(residual)) continue;
      const sample = samples[from + i]!;
      correction += weights.at(from + i) * (f(sample) - f(sample - residual));
    }
  }
  return seriesMean + correction;
}
