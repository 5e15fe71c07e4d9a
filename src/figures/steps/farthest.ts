/**
 * Index of the value farthest from a level, among values[from … last].
 *
 * @param values - shape N. Not changed.
 * @example farthest(Float64Array.of(5, 1, 6), [0, 2], 5) // 1
 */
export function farthest(
  values: Float64Array,
  [from, last]: readonly [number, number],
  level: number,
): number {
  let far = from;
  for (let k = from; k <= last; k++) {
    if (Math.abs(values[k]! - level) > Math.abs(values[far]! - level)) far = k;
  }
  return far;
}
