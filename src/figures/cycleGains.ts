import type { PeriodicRecord } from './measuredWave.ts';

/**
 * The size of each whole cycle relative to the fit over all of them.
 *
 * g = 1 + Σ r·s / Σ s² over the cycle, s the series without its mean, r the residual
 *
 * @returns one ratio a whole cycle, in time order; 1 where nothing changes.
 * @remarks Blind to where a cycle starts between two samples, which the RMS of a cut-out cycle is not.
 */
export function cycleGains({ samples, periodic }: PeriodicRecord): readonly number[] {
  const { fit, periodSamples } = periodic;
  const gains: number[] = [];
  for (let cycle = 0; (cycle + 1) * periodSamples <= samples.length; cycle++) {
    let match = 0;
    let square = 0;
    const end = Math.round((cycle + 1) * periodSamples);
    for (let n = Math.round(cycle * periodSamples); n < end; n++) {
      const residual = fit.residual[n]!;
      if (Number.isNaN(residual)) continue;
      const series = samples[n]! - residual - fit.mean;
      match += residual * series;
      square += series * series;
    }
    if (square > 0) gains.push(1 + match / square);
  }
  return gains;
}
