import type { Dialect } from './dialect.ts';
import { isNoValueNumber } from './isNoValueNumber.ts';

const BLANK = 32;
const TAB = 9;
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const COMMA = 44;
const QUOTE = 34;
const FIRST_BEYOND_ASCII = 128;

/**
 * Reads one row of plain numbers without making arrays of cells: digits, signs, decimal mark and
 * exponent, padded with blanks or not. Everything else (quotes, words, blank cells) is left to the caller.
 *
 * @param from - offset of the line's first character.
 * @param wanted - 0-based file columns, ascending.
 * @param values - filled with one finite value a wanted column: Number() of the token, bit for bit.
 * @returns offset of the next line; 0 where the row is not regular, `values` then being rubbish.
 */
export function scanRegularRow(
  text: string,
  from: number,
  { delimiter, decimalMark }: Dialect,
  wanted: readonly number[],
  values: Float64Array,
): number {
  const separator = delimiter === 'blanks' ? BLANK : delimiter.charCodeAt(0);
  const mark = decimalMark.charCodeAt(0);
  let at = from;
  let filled = 0;
  for (let column = 0; ; column++) {
    while (isPadding(text.charCodeAt(at), separator)) at++;
    const start = at;
    let code = text.charCodeAt(at);
    if (column === wanted[filled]) {
      while (isNumberPart(code, mark)) code = text.charCodeAt(++at);
      if (at === start) return 0;
      const token = text.slice(start, at);
      const value = Number(mark === COMMA ? token.replace(',', '.') : token);
      if (!Number.isFinite(value) || isNoValueNumber(value)) return 0;
      values[filled++] = value;
    } else {
      while (!isCellEnd(code, separator)) code = text.charCodeAt(++at);
    }
    const end = at;
    while (isPadding(text.charCodeAt(at), separator)) at++;
    code = text.charCodeAt(at);
    const isLineEnd = Number.isNaN(code) || code === LINE_FEED || code === CARRIAGE_RETURN;
    const isSeparated = delimiter === 'blanks' ? at > end : code === separator;
    if (!isLineEnd && !isSeparated) return 0;
    if (filled === wanted.length)
      return isLineEnd ? endOfLine(text, at) : endOfRest(text, at, separator, mark);
    if (isLineEnd) return 0;
    if (delimiter !== 'blanks') at++;
  }
}

/** The rest of the line is nobody's: comments, settings beside the rows. What may be a number makes it irregular. */
function endOfRest(text: string, from: number, separator: number, mark: number): number {
  let at = from;
  while (text.charCodeAt(at) === separator || isPadding(text.charCodeAt(at), separator)) at++;
  return mayStartNumber(text.charCodeAt(at), mark) ? 0 : endOfLine(text, at);
}

/** Digits, signs, the mark; and what only cells tell apart: quotes, and characters beyond ASCII such as a long minus. */
function mayStartNumber(code: number, mark: number): boolean {
  return isNumberPart(code, mark) ? code < 65 : code === QUOTE || code >= FIRST_BEYOND_ASCII;
}

function endOfLine(text: string, from: number): number {
  let at = from;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === LINE_FEED) return at + 1;
    if (code === CARRIAGE_RETURN) return text.charCodeAt(at + 1) === LINE_FEED ? at + 2 : at + 1;
  }
  return at;
}

function isPadding(code: number, separator: number): boolean {
  return code === BLANK || (code === TAB && separator !== TAB);
}

/** A quote ends the cell too: what follows is then no separator, and the row not regular. */
function isCellEnd(code: number, separator: number): boolean {
  return (
    code === separator ||
    (separator === BLANK && code === TAB) ||
    code === LINE_FEED ||
    code === CARRIAGE_RETURN ||
    code === QUOTE ||
    Number.isNaN(code)
  );
}

function isNumberPart(code: number, mark: number): boolean {
  return (
    (code >= 48 && code <= 57) || code === mark || code === 45 || code === 43 || code === 69 || code === 101
  );
}
