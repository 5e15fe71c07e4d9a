import type { DecimalMark } from './dialect.ts';

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

const MISSING_WORD =
  /^(|[+\-\u2212]?(inf(inity)?|∞)|[+-]?nan(\(.*\))?|[+-]?\d\.#\w+|n\/?a|#n\/a|null|none|[+\-\u2212]?(ol|over ?load|over ?flow|over ?range|clipped)|invalid|-+|\?+)$/i;

/**
 * Whether a cell stands for "no value here": empty, `inf`, `∞`, `nan`, 9.91E37, dashes, or anything starred
 * (`****`, `12.5*`: a value that its own writer doubts is not taken).
 */
export function isMissingMark(cell: string): boolean {
  const token = cell.trim();
  if (MISSING_WORD.test(token) || /^\*|^[\d.,+-]+\*+$/.test(token)) return true;
  return isNoValueNumber(Number(token.replace(',', '.')));
}

/** No instrument on a bench reads so much, in any unit. */
const BEYOND_ANY = 1e30;

/**
 * Whether a number stands for "no value here": 9.91E37 for not a number, 9.9E37 and −9.9E37 for infinities, and any
 * as large, such as the largest of single precision.
 *
 * @see SCPI-1999, volume 1, 7.2.1 (from memory): instruments that send numbers only say it so.
 */
export function isNoValueNumber(value: number): boolean {
  return value >= BEYOND_ANY || value <= -BEYOND_ANY;
}

/** Whether a cell fits a column of numbers: a number, or a mark for a missing one. No cell at all doesn't. */
export function holdsNumberOrMissing(cell: string | undefined, mark: DecimalMark): boolean {
  return cell !== undefined && (isMissingMark(cell) || parseNumber(cell, mark) !== null);
}

const MARK = /^([+-]?)(inf(inity)?|\u221e|\d\.#inf\w*|ol|over ?load|over ?flow|over ?range|clipped)$/i;
/** SCPI's not-a-number says nothing of a range. */
const NOT_A_NUMBER = 9.91e37;

/**
 * What a cell without a value says of the range: +∞ where it means "beyond it" (`inf`, `∞`, `OL`, 9.9E37), −∞ where
 * it says that with a minus, else NaN. Many writers have one mark for both ends.
 */
export function beyondRange(cell: string): number {
  const token = cell.trim().replace('\u2212', '-');
  const match = MARK.exec(token);
  if (match !== null) return match[1] === '-' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const value = token === '' ? 0 : Number(token.replace(',', '.'));
  if (!isNoValueNumber(value) || value === NOT_A_NUMBER) return Number.NaN;
  return value < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
}
