import { RUN_SAMPLES } from './longRecord.ts';

/** Highest and lowest of the present samples. */
export interface Extremes {
  /** Present samples. */
  readonly count: number;
  readonly max: number;
  readonly min: number;
}

/**
 * Extremes and count of the present samples.
 *
 * @param samples - shape N; NaN marks a missing sample; at least one is present. Not changed.
 * @throws RangeError when no sample is present.
 */
export function extremes(samples: ArrayLike<number>): Extremes {
  const seen = { count: 0, max: Number.NEGATIVE_INFINITY, min: Number.POSITIVE_INFINITY };
  for (let from = 0; from < samples.length; from += RUN_SAMPLES) {
    widen(seen, samples, from, Math.min(samples.length, from + RUN_SAMPLES));
  }
  if (seen.count === 0) throw new RangeError('extremes of no samples');
  return seen;
}

function widen(
  seen: { count: number; max: number; min: number },
  samples: ArrayLike<number>,
  from: number,
  to: number,
): void {
  let { count, max, min } = seen;
  for (let n = from; n < to; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    count++;
    if (x > max) max = x;
    if (x < min) min = x;
  }
  seen.count = count;
  seen.max = max;
  seen.min = min;
}
