import { decimalExponent } from '../../base/elementary/decimalExponent.ts';
import { powerOfTen } from '../../base/elementary/powerOfTen.ts';

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
