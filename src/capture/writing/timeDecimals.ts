import { decimalExponent } from '../../base/elementary/decimalExponent.ts';

/**
 * How many decimals a time needs so that its rounding is under a thousandth of the interval.
 *
 * @param interval - positive, in the unit that the times are written in.
 */
export function timeDecimals(interval: number): number {
  return Math.max(0, 3 - decimalExponent(interval));
}
