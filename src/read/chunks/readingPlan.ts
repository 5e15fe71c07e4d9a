import { type ChosenColumns, chooseColumns } from '../columns/chooseColumns.ts';
import { type ColumnTrend, columnTrend } from '../columns/columnTrend.ts';
import { layColumns } from '../columns/layColumns.ts';
import { type Head, readHead } from '../head/readHead.ts';
import { timeSettings } from '../head/timeSettings.ts';
import { locateTable } from '../table/locateTable.ts';
import { rowShape } from '../table/readCells.ts';
import { endsInCutRow } from '../table/rowWidths.ts';
import { type RowsIn, type ScannedRows, scanRows } from '../table/scanRows.ts';
import type { TableShape } from '../table/table.ts';
import { type ColumnDigits, columnDigits } from '../text/columnDigits.ts';
import { detectEncoding, type Encoding, PagedText, refuseBinary, refuseForeign } from '../text/decodeText.ts';
import { type ByteSource, lineAt, sampleLines, type TextAccess } from '../text/textAccess.ts';

/** How a large file is read: what its head, its tail and lines spread over it tell. */
export interface ReadingPlan {
  readonly layout: FileLayout;
  readonly scan: ScanPlan;
  /** What becomes of each of the table's columns. */
  readonly uses: readonly ColumnUse[];
  /** The last rows, read one by one: there the file may be cut, or hold text. All of the table's columns. */
  readonly tail: ScannedRows;
  /** Rows that the whole file holds, as the lengths of sampled lines tell. */
  readonly estimatedRows: number;
}

/** How the body of a file is read in chunks: plain data, to be handed to other threads. */
interface ScanPlan extends RowsIn {
  /** Offsets in the file, half-open: the body without its last rows. A row starts at each. */
  readonly from: number;
  readonly to: number;
  /** In bytes. */
  readonly chunkLength: number;
  /** Rows that a chunk holds, as sampled lines tell. */
  readonly chunkRows: number;
}

/** Kept row by row; reduced to their line, as an even time is; only checked to be numbers. */
type ColumnUse = 'kept' | 'stamps' | 'checked';

/** Stretches of a file, in bytes. */
export interface ReadingLengths {
  /** Looked at first, and read one row at a time at the end. */
  readonly end: number;
  readonly chunk: number;
}

/** A chunk and its rows stay within a core's own cache; a thread waits a millisecond at most for another's. */
const READING_LENGTHS: ReadingLengths = { end: 1 << 16, chunk: 1 << 20 };

/** What a file is shows here. */
const FIRST_BYTES = 1 << 16;
const SAMPLE_LINES = 64;
/** Lines sampled may be longer than most. */
const ROWS_TO_SPARE = 1.05;

/**
 * Plans the reading of a file that is not in memory.
 *
 * @param encoding - found to be Latin-1 by bytes that came later; absent: by the file's ends.
 * @returns null where the file is none that can be read in chunks: UTF-16, blank, or too short to have any.
 * @throws MeasureError `file.foreign`, `file.binary`, `file.spectrum`, `rows.none`.
 */
export function readingPlan(
  source: ByteSource,
  sampleRateHz: number | undefined,
  lengths: ReadingLengths = READING_LENGTHS,
  encoding?: 'latin-1',
): ReadingPlan | null {
  const { byteLength } = source;
  if (byteLength <= 2 * lengths.end) return null;
  const first = bytesOf(source, 0, FIRST_BYTES);
  refuseForeign(first);
  const [headSays, tailSays] = [detectEncoding(first), detectEncoding(lastLines(source, lengths.end))];
  if (headSays === 'utf-16le' || headSays === 'utf-16be') return null;
  const decided = encoding ?? (headSays === 'utf-8' && tailSays === 'utf-8' ? 'utf-8' : 'latin-1');
  const isMarked = first[0] === 0xef && first[1] === 0xbb && first[2] === 0xbf;
  const origin = decided === 'utf-8' && isMarked ? 3 : 0;
  const text = new PagedText(source, origin, decided);
  refuseBinary(text);
  // Nothing but blanks, wherever one looks.
  if (sampleLines(text, SAMPLE_LINES).length === 0) return null;
  const layout = fileLayout(text, decided, sampleRateHz);
  const { table } = layout;

  const tailFrom = lineAt(text, text.length - lengths.end).next;
  const firstRowsTo = lineAt(text, table.bodyFrom + lengths.end).next;
  if (firstRowsTo >= tailFrom) return null;
  const rowsOf = (from: number, to: number): ScannedRows =>
    scanRows(text.slice(from, to), { ...table, bodyFrom: 0, bodyLine: 0 });
  const sampled = sampleLines(text, SAMPLE_LINES, table.bodyFrom);
  const meanLength = sampled.reduce((sum, line) => sum + line.length + 1, 0) / sampled.length;
  return {
    layout,
    scan: {
      table: rowShape(table),
      encoding: decided,
      from: origin + table.bodyFrom,
      to: origin + tailFrom,
      chunkLength: lengths.chunk,
      chunkRows: Math.ceil((ROWS_TO_SPARE * lengths.chunk) / meanLength),
    },
    uses: columnUses(layout, rowsOf(table.bodyFrom, firstRowsTo)),
    tail: rowsOf(tailFrom, text.length),
    estimatedRows: Math.ceil((ROWS_TO_SPARE * (text.length - table.bodyFrom)) / meanLength),
  };
}

/** The same for those columns that were not kept the first time. */
export function keepingOthers(plan: ReadingPlan): ReadingPlan {
  return { ...plan, uses: plan.uses.map((use) => (use === 'kept' ? 'checked' : 'kept')) };
}

/** As the first rows have it; `captureOfEvenRows` sees whether it holds for all. */
function columnUses(layout: FileLayout, { columns }: ScannedRows): ColumnUse[] {
  const { axis, values, blockCount } = chosenColumns(layout, columns.map(columnTrend), columns);
  // Without an axis there is nothing to reduce; two times have to be held beside each other.
  if (axis.column === null || blockCount > 1) return columns.map(() => 'kept');
  const kept = new Set(values.map((column) => column.index));
  return columns.map((_, k) => (k === axis.column?.index ? 'stamps' : kept.has(k) ? 'kept' : 'checked'));
}

function bytesOf(source: ByteSource, from: number, to: number): Uint8Array {
  const bytes = new Uint8Array(Math.max(0, Math.min(to, source.byteLength) - from));
  source.read(from, bytes);
  return bytes;
}

/** From a line end on, so that no character is cut. */
function lastLines(source: ByteSource, length: number): Uint8Array {
  const bytes = bytesOf(source, source.byteLength - length, source.byteLength);
  return bytes.subarray(Math.max(0, bytes.indexOf(10)));
}

/** What is known of a file before its rows are read. */
export interface FileLayout {
  readonly encoding: Encoding;
  readonly table: TableShape;
  readonly head: Head;
  /** Whether the last row lost its end. */
  readonly isCut: boolean;
  /** How a column prints its numbers. @param column - 0-based column of the file. */
  readonly digitsOf: (column: number) => ColumnDigits;
  /** Given by the person, for a file that has no time. */
  readonly sampleRateHz: number | undefined;
}

/**
 * Learns a file's layout from its first lines, lines spread over it, and its last.
 *
 * @throws MeasureError `rows.none`.
 */
export function fileLayout(
  text: TextAccess,
  encoding: Encoding,
  sampleRateHz: number | undefined,
): FileLayout {
  const table = locateTable(text);
  return {
    encoding,
    table,
    head: readHead(table),
    isCut: endsInCutRow(text, table),
    digitsOf: (column) => columnDigits(text, table, column),
    sampleRateHz,
  };
}

/**
 * Which columns of a file are its axis and its channels.
 *
 * @param trends - of the table's columns, in order.
 * @param values - the columns themselves; looked at only where several are times.
 * @returns also how many blocks of columns the table has, each with a time of its own.
 * @throws MeasureError `file.spectrum`.
 */
export function chosenColumns(
  { table, head, sampleRateHz }: FileLayout,
  trends: readonly ColumnTrend[],
  values: readonly Float64Array[],
): ChosenColumns & { readonly blockCount: number } {
  const hasInterval = timeSettings(head.settings).intervalS !== null || sampleRateHz !== undefined;
  const blocks = layColumns(table, head, trends, hasInterval);
  return { ...chooseColumns(blocks, values, head.textColumnNames), blockCount: blocks.length };
}
