import type { HarmonicFit } from '../signal/fitHarmonics.ts';
import { foldedMean } from '../signal/foldedMean.ts';
import { sampleCycle } from '../signal/harmonicSeries.ts';

/** Points of the cycle that peaks, crossings and the deviation factor are read from. */
export const CYCLE_POINTS = 1024;

/**
 * The periodic wave, one cycle from a rising zero of the fundamental: the harmonic series where that tells
 * all, with the folded residual on top where edges or sharp features stand above the orders fitted.
 *
 * @param fit - of the record that is folded.
 * @param phaseRad - of the fundamental at the record's centre.
 * @returns shape CYCLE_POINTS, in the unit of the samples.
 * @remarks Orders under four of their own standard deviations are left out, so that noise in fifty orders
 * does not lift the peak: a maximum of noise is never its mean.
 */
export function periodicCycle(fit: HarmonicFit, phaseRad: number): Float64Array {
  const heard = (k: number): boolean =>
    Math.hypot(fit.cosine[k]!, fit.sine[k]!) >
    4 * Math.hypot(fit.deviation.cosine[k]!, fit.deviation.sine[k]!);
  const series = {
    mean: fit.mean,
    cosine: fit.cosine.map((c, k) => (heard(k) ? c : 0)),
    sine: fit.sine.map((s, k) => (heard(k) ? s : 0)),
  };
  const cycle = sampleCycle(series, CYCLE_POINTS, -phaseRad);
  const periodSamples = (2 * Math.PI) / fit.omega;
  // Sixteen samples a bin keep its noise at a quarter; more bins than half the samples a period stay empty.
  const finest = Math.min(fit.count / 16, periodSamples / 2, CYCLE_POINTS);
  const binCount = 2 ** Math.floor(Math.log2(Math.max(16, finest)));
  const folded = foldedMean(fit.residual, fit.omega, phaseRad, binCount);
  // The residual of a good fit folds to its own variance; twice that means a shape, not noise.
  if (folded.meanSquare < 2 * fit.residualDeviation ** 2) return cycle;
  for (let n = 0; n < CYCLE_POINTS; n++) {
    cycle[n]! += folded.bins[Math.floor((n * binCount) / CYCLE_POINTS)]!;
  }
  return cycle;
}
