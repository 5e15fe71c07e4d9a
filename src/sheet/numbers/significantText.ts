import { decimalText } from './decimalText.ts';

/**
 * A number without an uncertainty of its own: so many significant digits, trailing zeros dropped.
 *
 * @param digits - 1 and up.
 * @example significantText(0.66781, 3) // "0.668"
 * @example significantText(253, 3) // "253"
 */
export function significantText(value: number, digits: number): string {
  if (value === 0) return '0';
  const exponent = Number(value.toExponential(digits - 1).split('e')[1]);
  const text = decimalText(value, digits - 1 - exponent);
  return /^[^e]*\.[^e]*$/.test(text) ? text.replace(/\.?0+$/, '') : text;
}
