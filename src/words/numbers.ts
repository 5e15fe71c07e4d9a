import { decimalExponent, powerOfTen } from '../base/elementary.ts';

/** U+2212: as wide as a plus sign, and never broken from its number. */
const minusSign = '\u2212';

/** From here up, and past this many decimals, digits no longer help: only a file without a sane scale gets there. */
const hugeValue = 1e9;
const mostDecimals = 9;

/**
 * A number at a fixed decimal place, with a real minus sign and never "−0".
 *
 * @param value - finite.
 * @param decimals - digits after the point; negative rounds to tens (−1), hundreds (−2), …
 * @returns plain decimal notation; "1.2e15" from 1e9 up and where more than nine decimals were asked for.
 * @throws RangeError when the value is not finite.
 * @example decimalText(-1234.56, 1) // "−1234.6"
 * @example decimalText(1234.56, -2) // "1200"
 */
export function decimalText(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number to print must be finite, got ${value}`);
  const size = Math.abs(value);
  const text =
    size >= hugeValue || decimals > mostDecimals ? powerText(size, decimals) : plainText(size, decimals);
  return value < 0 && /[1-9]/.test(text) ? minusSign + text : text;
}

function plainText(size: number, decimals: number): string {
  if (decimals >= 0) return size.toFixed(decimals);
  const step = powerOfTen(-decimals);
  return (Math.round(size / step) * step).toFixed(0);
}

/** With a power of ten, to the same decimal place but seven digits at most. */
function powerText(size: number, decimals: number): string {
  if (size === 0) return '0';
  const digits = decimalExponent(size) + decimals;
  return size
    .toExponential(Math.min(Math.max(digits, 0), 6))
    .replace('e+', 'e')
    .replace('e-', `e${minusSign}`);
}

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

/**
 * The decimal place to which an uncertainty, and so its value, is printed.
 *
 * Two significant digits when they start with 1 or 2, one when they start with 3 or more (2.96 is 3.0, so 3):
 * the rounding moves the uncertainty by 17 % of itself at most, and no digit is shown that means nothing.
 *
 * @param uncertainty - positive and finite.
 * @returns digits after the point; negative for tens, hundreds, …
 * @see JCGM 100:2008, 7.2.6: two significant digits usually suffice.
 * @example uncertaintyDecimals(0.0234) // 3, printed 0.023
 * @example uncertaintyDecimals(3.6) // 0, printed 4
 */
export function uncertaintyDecimals(uncertainty: number): number {
  if (!(uncertainty > 0 && Number.isFinite(uncertainty))) {
    throw new RangeError(`an uncertainty to round by must be positive and finite, got ${uncertainty}`);
  }
  const [mantissa, exponent] = uncertainty.toExponential(1).split('e') as [string, string];
  return (Number(mantissa) < 3 ? 1 : 0) - Number(exponent);
}

/**
 * A count with its thousands set apart by no-break spaces; four digits stay together.
 *
 * @param count - an integer, 0 and up.
 * @see ISO 80000-1:2009, 7.3.1: groups of three, a space and no comma or point.
 */
export function groupedText(count: number): string {
  const digits = String(count);
  return digits.length <= 4 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, noBreakSpace);
}

/** U+00A0: a number and its unit stay on one line. */
export const noBreakSpace = '\u00a0';

/** A number's text and its unit, held together by a no-break space; the number alone where there is no unit. */
export function withUnit(text: string, unit: string): string {
  return unit === '' ? text : text + noBreakSpace + unit;
}

const gap = /(?<=\d) (?=(?:%|ppm|points|[munµkM]?(?:V|A|W|s|Hz|S\/s))(?![\p{L}\p{N}]))/gu;

/** A sentence whose numbers are held to their units by no-break spaces, so that a line never breaks between. */
export function bindUnits(sentence: string): string {
  return sentence.replace(gap, noBreakSpace);
}
