import { decimalExponent } from '../../base/elementary/decimalExponent.ts';
import { powerOfTen } from '../../base/elementary/powerOfTen.ts';
import { decimalText } from './decimalText.ts';

/**
 * An upper bound in text: two significant digits, rounded up, since a bound rounded down is none.
 *
 * @param bound - positive.
 * @example boundText(0.4213) // "0.43"
 */
export function boundText(bound: number): string {
  const decimals = 1 - decimalExponent(bound);
  const step = powerOfTen(-decimals);
  // A bound that is a whole number of steps already must not be lifted by its last bit.
  return decimalText(Math.ceil(bound / step - 1e-9) * step, Math.max(0, decimals));
}
