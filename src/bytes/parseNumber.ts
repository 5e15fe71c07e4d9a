import type { DecimalMark } from './dialect.ts';
import { isNoValueNumber } from './isNoValueNumber.ts';

const PLAIN_NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;
const COMMA_NUMBER = /^[+-]?(\d*,\d+|\d+)([eE][+-]?\d+)?$/;

/** Characters: a double has at most 767 digits that mean something. */
const LONGEST = 1024;

/**
 * A cell as a number: decimal digits with an optional sign, decimal mark and exponent. Blanks after the
 * sign and the typographic minus are accepted; hexadecimal, `Infinity` and the empty cell are no numbers.
 *
 * @returns exactly what Number() makes of the cleaned token; null where the cell is no number or
 * lies beyond the range of a double, or is a number that stands for none.
 * @example parseNumber('-00.0493', '.') // -0.0493
 */
export function parseNumber(cell: string, mark: DecimalMark): number | null {
  if (cell.length > LONGEST) return null;
  let token = cell.trim().replace('\u2212', '-');
  if (/^[+-]\s/.test(token)) token = token.charAt(0) + token.slice(1).trim();
  if (!(mark === ',' ? COMMA_NUMBER : PLAIN_NUMBER).test(token)) return null;
  const value = Number(mark === ',' ? token.replace(',', '.') : token);
  return Number.isFinite(value) && !isNoValueNumber(value) ? value : null;
}
