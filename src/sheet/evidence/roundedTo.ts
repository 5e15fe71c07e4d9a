import { decimalExponent } from '../../base/elementary/decimalExponent.ts';

/**
 * Values rounded to so many decimal digits of the range that they span, so that their text is short and the
 * picture the same.
 *
 * @param values - shape N; NaN stays.
 * @param digits - 5: to a step between a hundred-thousandth and a millionth of the range.
 */
export function roundedTo(values: ArrayLike<number>, digits: number): number[] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const range = high - low;
  const decimals = range > 0 ? digits - decimalExponent(range) : 12;
  const kept = Math.min(100, Math.max(0, decimals));
  return Array.from(values, (value) => Number(value.toFixed(kept)));
}
