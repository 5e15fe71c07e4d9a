import { splitCells } from '../text/dialect.ts';
import { countUpTo, lineAt } from '../text/textAccess.ts';
import { type RowShape, readCells, rowShape } from './readCells.ts';
import { type ColumnBuffers, makeRoom, roomFor, scanRegularRows } from './scanRegularRows.ts';
import type { TableShape } from './table.ts';

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
 * Reads the rows of numbers of a text to its end, as `scanChunk` does those of a file's bytes.
 *
 * @returns one array for each of the table's columns.
 */
export function scanRows(text: string, table: TableShape): ScannedRows {
  const { bodyFrom, bodyLine } = table;
  const body = text.slice(bodyFrom);
  const bytes = new TextEncoder().encode(/[\n\r]$/.test(body) ? body : `${body}\n`);
  const target = { columns: table.columns.map(() => new Float64Array(0)), rowCount: 0 };
  const plan = { table: rowShape(table), encoding: 'utf-8' } as const;
  const { rowCount, malformed, rowsBeforeEmptyLines } = scanChunk(bytes, 0, bytes.length, plan, target);
  return {
    rowCount,
    columns: target.columns.map((column) => column.slice(0, rowCount)),
    malformed: malformed.map((one) => ({ ...one, line: bodyLine + one.line })),
    lineOfRow: (row) => bodyLine + row + countUpTo(rowsBeforeEmptyLines, row),
  };
}

/** The rows of one chunk, but for their values. Rows and lines count from the chunk's own first. */
export interface ScannedChunk {
  readonly rowCount: number;
  readonly lineCount: number;
  readonly malformed: readonly MalformedRow[];
  /** For each line without content: how many rows stand before it. */
  readonly rowsBeforeEmptyLines: readonly number[];
  /** False where a line's bytes are no UTF-8. */
  readonly isUtf8: boolean;
}

/** What rows of bytes are read by. */
export interface RowsIn {
  readonly table: RowShape;
  /** In which line ends and digits are the bytes of ASCII. */
  readonly encoding: 'utf-8' | 'latin-1';
}

/** Entered and left many times in a chunk, the scan is compiled whole and early. */
const STRETCH = 1 << 14;
/** Rows behind those of a chunk that there is room for while its last stretch is read. */
export const ROWS_AHEAD: number = roomFor(STRETCH);
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/**
 * Reads the rows that start within a stretch of bytes: regular ones by a plain scan, any other by splitting its
 * line into cells. Empty lines hold no row.
 *
 * @param bytes - a line end stands at or behind `to`.
 * @param from - offset of a line's first byte.
 * @param target - empty; filled with one value for each of the table's columns, which grow where they must.
 */
export function scanChunk(
  bytes: Uint8Array,
  from: number,
  to: number,
  { table, encoding }: RowsIn,
  target: ColumnBuffers,
): ScannedChunk {
  const { dialect, columns } = table;
  const malformed: MalformedRow[] = [];
  const rowsBeforeEmptyLines: number[] = [];
  const values = new Float64Array(columns.length);
  let isUtf8 = true;
  for (let at = from; at < to; ) {
    const stretchTo = Math.min(to, at + STRETCH);
    makeRoom(target, stretchTo - at);
    at = scanRegularRows(bytes, at, stretchTo, dialect, columns, target);
    if (at >= stretchTo) continue;
    const row = target.rowCount;
    const line = row + rowsBeforeEmptyLines.length;
    if (bytes[at] === LINE_FEED || bytes[at] === CARRIAGE_RETURN) {
      rowsBeforeEmptyLines.push(row);
      at = lineStart(bytes, at + 1);
      continue;
    }
    const next = lineStart(bytes, at + 1);
    const decoded = decodeLine(bytes.subarray(at, next), encoding);
    isUtf8 &&= decoded.isUtf8;
    at = next;
    const content = decoded.text.slice(0, lineAt(decoded.text, 0).to);
    if (content.trim() === '') {
      rowsBeforeEmptyLines.push(row);
      continue;
    }
    if (!readCells(splitCells(content, dialect.delimiter), table, values)) {
      malformed.push({ row, line, text: content });
      values.fill(Number.NaN);
    }
    for (let k = 0; k < values.length; k++) target.columns[k]![row] = values[k]!;
    target.rowCount++;
  }
  const { rowCount } = target;
  const lineCount = rowCount + rowsBeforeEmptyLines.length;
  return { rowCount, lineCount, malformed, rowsBeforeEmptyLines, isUtf8 };
}

function decodeLine(
  bytes: Uint8Array,
  encoding: RowsIn['encoding'],
): { readonly text: string; readonly isUtf8: boolean } {
  if (encoding === 'latin-1') return { text: new TextDecoder('latin1').decode(bytes), isUtf8: true };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes), isUtf8: true };
  } catch {
    return { text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes), isUtf8: false };
  }
}

/**
 * Where the first line starts that starts at or behind an offset.
 *
 * @param at - 1 ≤ at ≤ bytes.length; the byte before it is looked at.
 * @returns bytes.length where none does.
 */
export function lineStart(bytes: Uint8Array, at: number): number {
  let end = at - 1;
  while (end < bytes.length && bytes[end] !== LINE_FEED && bytes[end] !== CARRIAGE_RETURN) end++;
  // A pair that ends a line is one end.
  const isPair = bytes[end] === CARRIAGE_RETURN && bytes[end + 1] === LINE_FEED;
  return Math.min(bytes.length, end + (isPair ? 2 : 1));
}
