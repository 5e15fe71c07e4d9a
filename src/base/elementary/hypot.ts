/**
 * The root of the sum of squares, added in the order given; the same on every engine.
 *
 * @param values - of a size whose squares are doubles: 10⁻¹⁵⁰ to 10¹⁵⁰.
 */
export function hypot(...values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return Math.sqrt(sum);
}
