/** U+2212: as wide as a plus sign, and never broken from its number. */
const minusSign = '\u2212';

/**
 * A number in plain decimal notation at a fixed decimal place, with a real minus sign and never "−0".
 *
 * @param value - finite.
 * @param decimals - digits after the point; negative rounds to tens (−1), hundreds (−2), …
 * @returns from 1e21 up in exponent notation, which no real capture reaches.
 * @throws RangeError when the value is not finite.
 * @example decimalText(-1234.56, 1) // "−1234.6"
 * @example decimalText(1234.56, -2) // "1200"
 */
export function decimalText(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number to print must be finite, got ${value}`);
  const places = Math.min(Math.max(decimals, 0), 15);
  const step = 10 ** Math.max(-decimals, 0);
  const digits = (Math.round(Math.abs(value) / step) * step).toFixed(0);
  const text = decimals < 0 ? digits : Math.abs(value).toFixed(places);
  return value < 0 && /[1-9]/.test(text) ? minusSign + text : text;
}
