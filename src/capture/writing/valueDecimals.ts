import { decimalExponent } from '../../base/elementary/decimalExponent.ts';

/** How many decimals give the largest of the values seven significant digits. */
export function valueDecimals(values: Float64Array): number {
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return largest === 0 ? 0 : Math.max(0, 6 - decimalExponent(largest));
}
