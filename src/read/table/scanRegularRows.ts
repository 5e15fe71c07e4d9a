import type { Dialect } from '../text/dialect.ts';
import { isNoValueNumber } from '../text/parseNumber.ts';

const TAB = 9;
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const BLANK = 32;
const QUOTE = 34;
const PLUS = 43;
const MINUS = 45;
const ZERO = 48;
const NINE = 57;
const CAPITAL_E = 69;
const SMALL_E = 101;
const FIRST_BEYOND_ASCII = 128;

/** Powers of ten that a double holds exactly. */
const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const LARGEST_POWER = POWERS_OF_TEN.length - 1;
/** Above it a number may be so large that it stands for none. */
const LARGEST_PLAIN_POWER = 14;
/** An exponent of so many digits is beyond any double; Number() says on which side. */
const MOST_EXPONENT = 9999;

/**
 * Reads rows of plain numbers from bytes, as long as they are regular: digits, signs, decimal mark and
 * exponent, padded with blanks or not; in cells that nobody wants and behind the last one, any ASCII.
 *
 * Each value is Number() of its token, bit for bit. Where the digits make a whole number below 2^53 and the power
 * of ten is at most 22, both are exact and one multiplication or division rounds once, as it must; any other
 * token is handed to Number().
 *
 * @param bytes - ASCII or an encoding that contains it. A line end stands at or behind `to`.
 * @param from - offset of a row's first byte.
 * @param to - rows that start before it are read, to their end.
 * @param wanted - 0-based file columns, ascending.
 * @param target - filled behind the rows that are there; with room for one in every two bytes.
 * @returns the offset of the first row not read: one at or behind `to`, or one that is not regular.
 * @see W. D. Clinger, How to read floating point numbers accurately, PLDI 1990 (from memory).
 */
export function scanRegularRows(
  bytes: Uint8Array,
  from: number,
  to: number,
  { delimiter, decimalMark }: Dialect,
  wanted: readonly number[],
  target: ColumnBuffers,
): number {
  const isBlanks = delimiter === 'blanks';
  const separator = isBlanks ? BLANK : delimiter.charCodeAt(0);
  // Where tabs part the cells they pad none.
  const padding = separator === TAB ? BLANK : TAB;
  const mark = decimalMark.charCodeAt(0);
  // Only quotes tell such marks and delimiters apart.
  if (mark === separator) return from;
  const { columns } = target;
  const last = wanted.length - 1;
  const unwantedBefore = Int32Array.from(wanted, (column, k) => column - (wanted[k - 1] ?? -1) - 1);
  let row = target.rowCount;
  let rowFrom = from;
  let at = from;

  rows: while (at < to) {
    rowFrom = at;
    for (let k = 0; k <= last; k++) {
      let byte = bytes[at]!;
      for (let unwanted = unwantedBefore[k]!; unwanted > 0; unwanted--) {
        while (byte === BLANK || byte === padding) byte = bytes[++at]!;
        while (
          byte !== separator &&
          byte !== LINE_FEED &&
          byte !== CARRIAGE_RETURN &&
          byte !== QUOTE &&
          byte < FIRST_BEYOND_ASCII &&
          !(isBlanks && byte === TAB)
        )
          byte = bytes[++at]!;
        const end = at;
        while (byte === BLANK || byte === padding) byte = bytes[++at]!;
        if (isBlanks ? at === end : byte !== separator) break rows;
        if (!isBlanks) byte = bytes[++at]!;
      }

      while (byte === BLANK || byte === padding) byte = bytes[++at]!;
      const tokenFrom = at;
      const isNegative = byte === MINUS;
      if (isNegative || byte === PLUS) byte = bytes[++at]!;
      // Exact as long as it stays below 2^53; beyond, it never comes back below. Minus zero is no small integer: an
      // engine that guesses types from the first rows then doesn't guess that all numbers are.
      let digits = -0;
      const wholeFrom = at;
      for (let digit = byte - ZERO; digit >= 0 && digit <= 9; digit = byte - ZERO) {
        digits = digits * 10 + digit;
        byte = bytes[++at]!;
      }
      let digitCount = at - wholeFrom;
      let power = 0;
      if (byte === mark) {
        byte = bytes[++at]!;
        const fractionFrom = at;
        for (let digit = byte - ZERO; digit >= 0 && digit <= 9; digit = byte - ZERO) {
          digits = digits * 10 + digit;
          byte = bytes[++at]!;
        }
        power = fractionFrom - at;
        digitCount -= power;
      }
      if (digitCount === 0) break rows;
      if (byte === SMALL_E || byte === CAPITAL_E) {
        byte = bytes[++at]!;
        const isDown = byte === MINUS;
        if (isDown || byte === PLUS) byte = bytes[++at]!;
        const exponentFrom = at;
        let exponent = 0;
        for (let digit = byte - ZERO; digit >= 0 && digit <= 9; digit = byte - ZERO) {
          if (exponent < MOST_EXPONENT) exponent = exponent * 10 + digit;
          byte = bytes[++at]!;
        }
        if (at === exponentFrom) break rows;
        power += isDown ? -exponent : exponent;
      }
      let value: number;
      if (digits > Number.MAX_SAFE_INTEGER || power < -LARGEST_POWER || power > LARGEST_PLAIN_POWER) {
        value = numberOf(bytes, tokenFrom, at, mark);
        if (value - value !== 0 || isNoValueNumber(value)) break rows;
      } else {
        value = power <= 0 ? digits / POWERS_OF_TEN[-power]! : digits * POWERS_OF_TEN[power]!;
        if (isNegative) value = -value;
      }
      columns[k]![row] = value;

      if (byte === separator && !isBlanks) {
        at++;
        continue;
      }
      const end = at;
      while (byte === BLANK || byte === padding) byte = bytes[++at]!;
      const isLineEnd = byte === LINE_FEED || byte === CARRIAGE_RETURN;
      const isSeparated = isBlanks ? at > end : byte === separator;
      if (isLineEnd ? k < last : !isSeparated) break rows;
      if (!isLineEnd && !isBlanks) at++;
    }

    // The rest of the line is nobody's: comments, settings beside the rows. What may be a number makes it irregular.
    let byte = bytes[at]!;
    while (byte === separator || byte === BLANK || byte === padding) byte = bytes[++at]!;
    if (byte === QUOTE || byte === PLUS || byte === MINUS || byte === mark || (byte >= ZERO && byte <= NINE))
      break;
    while (byte !== LINE_FEED && byte !== CARRIAGE_RETURN) {
      if (byte >= FIRST_BEYOND_ASCII) break rows;
      byte = bytes[++at]!;
    }
    at += byte === CARRIAGE_RETURN && bytes[at + 1] === LINE_FEED ? 2 : 1;
    row++;
    rowFrom = at;
  }
  target.rowCount = row;
  return rowFrom;
}

/** Number() of the bytes of a token; NaN where it takes it for none. */
function numberOf(bytes: Uint8Array, from: number, to: number, mark: number): number {
  let token = '';
  for (let at = from; at < to; at++) token += bytes[at] === mark ? '.' : String.fromCharCode(bytes[at]!);
  return Number(token);
}

/** Columns that rows are read into, and how many rows stand there. */
export interface ColumnBuffers {
  /** One array a wanted column, all of one length. */
  readonly columns: Float64Array[];
  rowCount: number;
}

/** A row is one character and a line end, at least. */
const LEAST_ROW = 2;

/** Rows that so many bytes may hold, and one that starts at their end. */
export function roomFor(byteCount: number): number {
  return Math.ceil(byteCount / LEAST_ROW) + 1;
}

/** Makes room for the rows of so many bytes more. */
export function makeRoom({ columns, rowCount }: ColumnBuffers, byteCount: number): void {
  const needed = rowCount + roomFor(byteCount);
  if (columns.every((column) => column.length >= needed)) return;
  for (const [k, column] of columns.entries()) {
    const longer = new Float64Array(Math.max(needed, 2 * column.length));
    longer.set(column.subarray(0, rowCount));
    columns[k] = longer;
  }
}
