import { compensatedSum } from './compensatedSum.ts';
import { type Extremes, extremes } from './extremes.ts';

export interface Moments extends Extremes {
  readonly mean: number;
  /** Of the sample, divisor count − 1; 0 when count is 1. */
  readonly standardDeviation: number;
}

/**
 * Count, mean, standard deviation and extremes of the present samples, by two passes.
 *
 * s = √( Σ (x − mean)² / (count − 1) )
 *
 * @param samples - shape N; NaN marks a missing sample; at least one is present. Not changed.
 * @throws RangeError when no sample is present.
 * @remarks Two passes, because the one-pass Σx² − (Σx)²/N loses all digits when the mean is large
 * (NIST StRD NumAcc4).
 * @example moments([1, 2, 3]).standardDeviation // 1
 */
export function moments(samples: ArrayLike<number>): Moments {
  const { count, max, min } = extremes(samples);
  const mean = compensatedSum(samples) / count;
  let squares = 0;
  for (let n = 0; n < samples.length; n++) {
    const deviation = samples[n]! - mean;
    if (!Number.isNaN(deviation)) squares += deviation * deviation;
  }
  return { count, mean, standardDeviation: Math.sqrt(squares / Math.max(1, count - 1)), max, min };
}
