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
  let count = 0;
  let max = -Infinity;
  let min = Infinity;
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    count++;
    if (x > max) max = x;
    if (x < min) min = x;
  }
  if (count === 0) throw new RangeError('extremes of no samples');
  return { count, max, min };
}
