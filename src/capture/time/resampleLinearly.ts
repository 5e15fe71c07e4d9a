/**
 * Values on the straight lines between samples that lie unevenly in time.
 *
 * @param timesS - shape N, ascending, finite, from 0.
 * @param values - shape N, NaN where missing: a line that ends in one is missing too.
 * @returns shape count, at i · intervalS.
 */
export function resampleLinearly(
  timesS: Float64Array,
  values: Float64Array,
  intervalS: number,
  count: number,
): Float64Array {
  const samples = new Float64Array(count);
  let left = 0;
  for (let i = 0; i < count; i++) {
    const at = Math.min(i * intervalS, timesS.at(-1)!);
    while (left < timesS.length - 2 && timesS[left + 1]! <= at) left++;
    const width = timesS[left + 1]! - timesS[left]!;
    const share = width > 0 ? (at - timesS[left]!) / width : 0;
    samples[i] = values[left]! + share * (values[left + 1]! - values[left]!);
  }
  return samples;
}
