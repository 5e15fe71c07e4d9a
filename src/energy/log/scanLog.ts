import type { MalformedRow } from '../../read/table/scanRows.ts';
import type { HeadLine } from '../../read/table/table.ts';
import { splitCells } from '../../read/text/dialect.ts';
import { countUpTo } from '../../read/text/textAccess.ts';
import { type CellReader, NOTHING, type RowColumn, readerOf } from './cellReaders.ts';
import type { LogTable } from './logTable.ts';

/** All rows of a log, column by column. */
export interface LogRows {
  readonly rowCount: number;
  /** One a column of the file; the one of its three parts that its kind asks for. */
  readonly columns: readonly RowColumn[];
  /** Lines between the rows that are none; each is left out. */
  readonly malformed: readonly MalformedRow[];
  /** Rows before which the line of names stands again. */
  readonly headerBefore: readonly number[];
  /** Lines behind the last row. */
  readonly foot: readonly HeadLine[];
  /** The 1-based line of the file where a row stands. */
  readonly lineOfRow: (row: number) => number;
}

const QUOTE = 34;
/** Rows that there is room for before the length of a line is known. */
const FIRST_ROWS = 1024;
/** Later lines may be shorter. */
const SPARE = 1.1;

/** Reads the rows of a log, from its first to the end of the text, in one pass. */
export function scanLog(text: string, table: LogTable): LogRows {
  const { delimiter, kinds, core, headerText, bodyFrom, bodyLine } = table;
  const readers = kinds.map(readerOf);
  const width = kinds.length;
  const separator = delimiter === 'blanks' ? 32 : delimiter.charCodeAt(0);
  const lastCore = core.at(-1) ?? 0;
  const from = new Int32Array(width);
  const to = new Int32Array(width);
  const malformed: MalformedRow[] = [];
  const headerBefore: number[] = [];
  /** For each line that holds no row: how many rows stand before it. */
  const rowsBeforeOthers: number[] = [];
  let row = 0;
  let capacity = 0;
  let line = bodyLine;

  for (let at = bodyFrom; at < text.length; line++) {
    let end = text.indexOf('\n', at);
    if (end < 0) end = text.length;
    const next = end + 1;
    if (text.charCodeAt(end - 1) === 13 && end > at) end--;
    if (row === capacity) {
      // From then on as many as the lines so far leave room for in the rest of the text, and some.
      const left = row === 0 ? 0 : (SPARE * row * (text.length - at)) / (at - bodyFrom);
      capacity = row + Math.max(FIRST_ROWS, Math.ceil(left));
      for (const reader of readers) reader?.grow(capacity);
    }
    const cells = cellRanges(text, at, end, separator, delimiter === 'blanks', from, to);
    let isRow: boolean;
    if (cells >= 0) isRow = cells > lastCore && readRow(readers, text, from, to, cells, row);
    else {
      const split = splitCells(text.slice(at, end), delimiter);
      isRow = split.length > lastCore && readSplitRow(readers, split, row);
    }
    if (isRow) row++;
    else {
      rowsBeforeOthers.push(row);
      const content = text.slice(at, Math.min(end, at + 512));
      if (headerText !== null && content.trim() === headerText) headerBefore.push(row);
      else if (/[^\s,;|"\t]/.test(content)) malformed.push({ row, line, text: content });
    }
    at = next;
  }
  const isFoot = (one: MalformedRow): boolean => one.row === row;
  return {
    rowCount: row,
    columns: readers.map((reader) => ({ ...NOTHING, ...reader?.column(row) })),
    // What stands right above another line of names is the head of another test.
    malformed: malformed.filter((one) => !isFoot(one) && !headerBefore.includes(one.row)),
    headerBefore: headerBefore.filter((before) => before < row && before > 0),
    foot: malformed.filter(isFoot).map(({ line: at, text: content }) => ({
      line: at,
      text: content,
      cells: splitCells(content, delimiter),
    })),
    lineOfRow: (of) => bodyLine + of + countUpTo(rowsBeforeOthers, of),
  };
}

/**
 * Where the cells of a line stand, without blanks and quotes around them.
 *
 * @returns how many there are; −1 where quotes stand so that only a parser tells; one more than there is room for
 * where there are more than that.
 */
function cellRanges(
  text: string,
  lineFrom: number,
  lineTo: number,
  separator: number,
  isBlanks: boolean,
  from: Int32Array,
  to: Int32Array,
): number {
  const room = from.length;
  let cell = 0;
  let at = lineFrom;
  while (at <= lineTo) {
    let code = text.charCodeAt(at);
    while (at < lineTo && (code === 32 || (code === 9 && (isBlanks || separator !== 9))))
      code = text.charCodeAt(++at);
    if (isBlanks && at >= lineTo) break;
    let start = at;
    let stop: number;
    if (code === QUOTE && at < lineTo) {
      start++;
      stop = text.indexOf('"', start);
      if (stop < 0 || stop >= lineTo || text.charCodeAt(stop + 1) === QUOTE) return -1;
      at = stop + 1;
      if (at < lineTo && text.charCodeAt(at) !== separator) return -1;
    } else {
      while (at < lineTo && code !== separator && !(isBlanks && code === 9)) {
        if (code === QUOTE) return -1;
        code = text.charCodeAt(++at);
      }
      stop = at;
    }
    while (start < stop && text.charCodeAt(start) <= 32) start++;
    while (stop > start && text.charCodeAt(stop - 1) <= 32) stop--;
    if (cell === room) {
      // Cells behind the last column: an empty one ends each line of some writers.
      if (stop > start) return -1;
    } else {
      from[cell] = start;
      to[cell++] = stop;
    }
    at++;
  }
  return cell;
}

function readRow(
  readers: readonly (CellReader | null)[],
  text: string,
  from: Int32Array,
  to: Int32Array,
  cells: number,
  row: number,
): boolean {
  let values = 0;
  for (let column = 0; column < readers.length; column++) {
    const reader = readers[column]!;
    if (reader === null) continue;
    const found =
      column < cells ? reader.read(text, from[column]!, to[column]!, row) : reader.read('', 0, 0, row);
    if (found < 0) return false;
    values += found;
  }
  return values > 0;
}

function readSplitRow(
  readers: readonly (CellReader | null)[],
  cells: readonly string[],
  row: number,
): boolean {
  if (cells.length > readers.length && cells.slice(readers.length).some((cell) => cell !== '')) return false;
  let values = 0;
  for (let column = 0; column < readers.length; column++) {
    const cell = cells[column] ?? '';
    const found = readers[column]?.read(cell, 0, cell.length, row) ?? 0;
    if (found < 0) return false;
    values += found;
  }
  return values > 0;
}
