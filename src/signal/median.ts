import { orderStatistic } from './orderStatistic.ts';

/**
 * The middle of the sorted values; the mean of the two middle ones for an even count.
 *
 * @param values - shape N, N ≥ 1, no NaN. Not changed.
 * @throws RangeError when N = 0.
 * @example median([3, 1, 2]) // 2
 */
export function median(values: ArrayLike<number>): number {
  if (values.length === 0) throw new RangeError('median of no values');
  const parted = new Float64Array(values);
  const middle = parted.length >> 1;
  const upper = orderStatistic(parted, middle);
  if (parted.length % 2 === 1) return upper;
  // The largest of those before the middle.
  let lower = parted[0]!;
  for (let i = 1; i < middle; i++) if (parted[i]! > lower) lower = parted[i]!;
  return (lower + upper) / 2;
}
