/**
 * The middle of the sorted values; the mean of the two middle ones for an even count.
 *
 * @param values - shape N, N ≥ 1, no NaN. Not changed.
 * @throws RangeError when N = 0.
 * @example median([3, 1, 2]) // 2
 */
export function median(values: ArrayLike<number>): number {
  if (values.length === 0) throw new RangeError('median of no values');
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
