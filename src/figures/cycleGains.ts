import type { HarmonicFit } from '../signal/harmonicFit.ts';

/**
 * The size of each whole cycle relative to the fit over all of them.
 *
 * g = 1 + Σ r·s / Σ s² over the cycle, s the series without its mean, r the residual
 *
 * @returns one ratio a whole cycle, in time order; 1 where nothing changes.
 * @remarks Blind to where a cycle starts between two samples, which the RMS of a cut-out cycle is not.
 */
export function cycleGains(samples: Float64Array, fit: HarmonicFit): readonly number[] {
  const periodSamples = (2 * Math.PI) / fit.omega;
  const gains: number[] = [];
  const room = new Float64Array(Math.ceil(periodSamples) + 1);
  for (let cycle = 0; (cycle + 1) * periodSamples <= samples.length; cycle++) {
    const from = Math.round(cycle * periodSamples);
    const to = Math.round((cycle + 1) * periodSamples);
    const gain = gainOf(samples.subarray(from, to), fit.residual.stretch(from, to, room), fit.mean);
    if (gain !== null) gains.push(gain);
  }
  return gains;
}

/** Null for a cycle without samples. */
function gainOf(samples: Float64Array, left: Float64Array, mean: number): number | null {
  let match = 0;
  let square = 0;
  for (let i = 0; i < left.length; i++) {
    const residual = left[i]!;
    if (Number.isNaN(residual)) continue;
    const series = samples[i]! - residual - mean;
    match += residual * series;
    square += series * series;
  }
  return square > 0 ? 1 + match / square : null;
}
