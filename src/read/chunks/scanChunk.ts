import { type MalformedRow, readCells } from '../table/scanRows.ts';
import { splitCells } from '../text/dialect.ts';
import { lineAt } from '../text/textAccess.ts';
import { type ColumnBuffers, makeRoom, roomFor, type ScanPlan, scanRegularRows } from './scanRegularRows.ts';

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

/** Entered and left many times in a chunk, the scan is compiled whole and early. */
const STRETCH = 1 << 14;
/** Rows behind those of a chunk that there is room for while its last stretch is read. */
export const ROWS_AHEAD: number = roomFor(STRETCH);
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/**
 * Reads the rows that start within a stretch of bytes: regular ones by a plain scan, any other by splitting its
 * line into cells, as scanRows does.
 *
 * @param bytes - a line end stands at or behind `to`.
 * @param from - offset of a line's first byte.
 * @param target - empty; filled with one value for each of the table's columns, which grow where they must.
 */
export function scanChunk(
  bytes: Uint8Array,
  from: number,
  to: number,
  { table, encoding }: Pick<ScanPlan, 'table' | 'encoding'>,
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
  encoding: ScanPlan['encoding'],
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
