import { type Dialect, splitCells } from '../text/dialect.ts';
import { beyondRange, isMissingMark, isNoValueNumber, parseNumber } from '../text/parseNumber.ts';
import { countUpTo, lineAt } from '../text/textAccess.ts';
import { RowStore, type TableShape } from './table.ts';

/** A line inside the body that is no row of numbers. It keeps a row of its own, all values missing. */
export interface MalformedRow {
  /** 0-based row of the body. */
  readonly row: number;
  /** 1-based line of the file. */
  readonly line: number;
  readonly text: string;
  /** Why it is none, in words, where its text alone doesn't show it. */
  readonly reason?: string;
}

export interface ScannedRows {
  readonly rowCount: number;
  /** One array a column, shape rowCount; NaN where the cell is blank, missing or malformed, infinite beyond the range. */
  readonly columns: readonly Float64Array[];
  readonly malformed: readonly MalformedRow[];
  /** The 1-based line of the file where a row stands. */
  readonly lineOfRow: (row: number) => number;
}

/**
 * Reads the rows of numbers of a text to its end: regular rows by a plain scan, any other by splitting
 * the line into cells. Empty lines hold no row.
 *
 * @returns one array for each of the table's columns.
 */
export function scanRows(text: string, table: TableShape): ScannedRows {
  const { dialect, columns, bodyLine } = table;
  const store = new RowStore(columns.length);
  const malformed: MalformedRow[] = [];
  const rowsBeforeEmptyLines: number[] = [];
  const values = new Float64Array(columns.length);
  for (let at = table.bodyFrom, line = bodyLine; at < text.length; line++) {
    const next = scanRegularRow(text, at, dialect, columns, values);
    if (next > 0) {
      store.push(values);
      at = next;
      continue;
    }
    const irregular = lineAt(text, at);
    const content = text.slice(at, irregular.to);
    at = irregular.next;
    if (content.trim() === '') {
      rowsBeforeEmptyLines.push(store.rowCount);
      continue;
    }
    if (!readCells(splitCells(content, dialect.delimiter), table, values)) {
      malformed.push({ row: store.rowCount, line, text: content });
      values.fill(Number.NaN);
    }
    store.push(values);
  }
  return {
    rowCount: store.rowCount,
    columns: store.columns(),
    malformed,
    lineOfRow: (row) => bodyLine + row + countUpTo(rowsBeforeEmptyLines, row),
  };
}

/** What a table tells about each of its rows. */
export type RowShape = Pick<TableShape, 'dialect' | 'columns' | 'core' | 'looseFrom' | 'closedWidth'>;

/** Of all that is known of a table: what a thread that reads its rows needs. */
export function rowShape({ dialect, columns, core, looseFrom, closedWidth }: TableShape): RowShape {
  return { dialect, columns, core, looseFrom, closedWidth };
}

/**
 * Reads one row from its cells.
 *
 * @param values - filled with one value for each of the table's columns, NaN where the cell is missing, infinite
 * where it says that the value is beyond the instrument's range.
 * @returns false where the line is no row: a core column holds neither number, blank nor missing mark, or the line
 * is wider or narrower than a row can be, so that a number may stand in another's column.
 */
export function readCells(cells: readonly string[], shape: RowShape, values: Float64Array): boolean {
  const { columns, core, dialect } = shape;
  if (isTooWide(cells, shape) || isTooNarrow(cells, shape)) return false;
  return columns.every((column, k) => {
    const cell = cells[column];
    const value = cell === undefined ? null : parseNumber(cell, dialect.decimalMark);
    values[k] = value ?? (cell === undefined ? Number.NaN : beyondRange(cell));
    return value !== null || !core.includes(column) || (cell !== undefined && isMissingMark(cell));
  });
}

/** A number behind the last column: settings and remarks begin with a word. */
function isTooWide(cells: readonly string[], { looseFrom, dialect }: RowShape): boolean {
  for (let column = looseFrom; column < cells.length; column++) {
    if (cells[column] !== '') return parseNumber(cells[column]!, dialect.decimalMark) !== null;
  }
  return false;
}

/** Ended by a delimiter like the others, and yet with fewer cells: one of them is lost, not just empty. */
function isTooNarrow(cells: readonly string[], { closedWidth }: RowShape): boolean {
  return cells.length < closedWidth && cells.at(-1) === '';
}

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
