import type { AxisColumn } from '../columns/columnRole.ts';
import type { ReadNotice } from '../notices.ts';
import { readError } from '../readErrors.ts';
import { cleanText } from '../text/textAccess.ts';
import { stampSteps } from '../time/stampedTimeBase.ts';
import { isEven, lineThroughEnds } from '../time/stampLine.ts';
import { firstSegment } from './firstSegment.ts';
import type { MalformedRow, ScannedRows } from './scanRows.ts';

/** The rows of one record: those from 0 to rowCount − 1. */
interface RecordRows {
  readonly rowCount: number;
  /** Whether rows were kept only where a value changed. */
  readonly keptOnChange: boolean;
  readonly notices: readonly ReadNotice[];
}

/** What tells where a record ends. */
interface RecordEnds {
  /** Whether the last row lost its end. */
  readonly isCut: boolean;
  /** The axis column, null where there is none. */
  readonly stamps: Float64Array | null;
  /** The columns of values that are read. */
  readonly values: readonly Float64Array[];
  /** The last header line as the file writes it, null where there is none. */
  readonly headerText: string | null;
  /** 1-based line of the first row. */
  readonly firstLine: number;
}

/**
 * Of all rows scanned, those of the first record: what stands behind its last whole row is dropped, and
 * further records are left out.
 *
 * @throws MeasureError `rows.few`, `rows.malformed`, `time.backwards`.
 */
export function recordRows(scanned: ScannedRows, ends: RecordEnds): RecordRows {
  const { isCut, stamps, values, headerText, firstLine } = ends;
  const trimmed = trimRows(scanned, isCut, stamps === null ? values : [stamps, ...values]);
  const cut = (column: Float64Array): Float64Array => column.subarray(0, trimmed.rowCount);
  const keptOnChange = stamps !== null && isKeptOnChange(cut(stamps), values.map(cut));
  const segment = firstSegment(
    trimmed.rowCount,
    stamps === null ? null : cut(stamps),
    trimmed.malformed,
    headerText,
    scanned.lineOfRow,
    keptOnChange,
  );
  const malformed = trimmed.malformed.filter((row) => row.row < segment.rowCount);
  const notices = [
    ...segmentNotices(segment.segmentCount),
    ...cutNotices(trimmed.droppedCount),
    ...checkRows(segment.rowCount, malformed, firstLine),
  ];
  return { rowCount: segment.rowCount, keptOnChange, notices };
}

function segmentNotices(count: number): ReadNotice[] {
  return count === 1 ? [] : [{ code: 'segments.first', records: count }];
}

/** @param count - lines dropped behind the last whole row. */
export function cutNotices(count: number): ReadNotice[] {
  return count === 0 ? [] : [{ code: 'rows.cut', lines: count }];
}

const LEAST_ROWS = 16;
const MOST_MALFORMED_SHARE = 0.01;

/**
 * Whether there are enough rows, and few enough malformed ones among them.
 *
 * @returns a notice that names the lines of malformed rows, where there are any.
 * @throws MeasureError `rows.few` under 16 rows; `rows.malformed` where over 1 % are no rows.
 */
export function checkRows(
  rowCount: number,
  malformed: readonly MalformedRow[],
  firstLine: number,
): ReadNotice[] {
  if (rowCount < LEAST_ROWS) {
    throw readError('rows.few', { rows: rowCount, least: LEAST_ROWS }, { line: firstLine });
  }
  const [first] = malformed;
  if (first === undefined) return [];
  const found = first.reason ?? `"${cleanText(first.text, 40)}"`;
  if (malformed.length > MOST_MALFORMED_SHARE * rowCount) {
    const facts = { malformed: malformed.length, rows: rowCount, found };
    throw readError('rows.malformed', facts, { line: first.line });
  }
  const lines = malformed.slice(0, 3).map((row) => row.line);
  return [{ code: 'rows.malformed', lines, more: malformed.length - lines.length, found }];
}

/** The rows worth reading: how many of the scanned ones, and what was dropped at the end. */
interface TrimmedRows {
  readonly rowCount: number;
  readonly malformed: readonly MalformedRow[];
  /** Lines dropped at the end because they were cut or are no rows; 0 where none was. */
  readonly droppedCount: number;
}

/**
 * Drops what stands behind the last whole row: a row that was cut when the file was, text below the
 * table, rows of blanks.
 *
 * @param isCut - whether the last row lost its end.
 * @param kept - columns that are read; a row blank in all of them is none.
 */
export function trimRows(scanned: ScannedRows, isCut: boolean, kept: readonly Float64Array[]): TrimmedRows {
  const malformedRows = new Set(scanned.malformed.map((row) => row.row));
  let rowCount = scanned.rowCount;
  let droppedCount = 0;
  if (isCut && rowCount > 0 && !malformedRows.has(rowCount - 1)) {
    rowCount--;
    droppedCount++;
  }
  for (; rowCount > 0; rowCount--) {
    const last = rowCount - 1;
    if (malformedRows.has(last)) droppedCount++;
    else if (!kept.every((column) => Number.isNaN(column[last]!))) break;
  }
  return { rowCount, malformed: scanned.malformed.filter((row) => row.row < rowCount), droppedCount };
}

/** A step of so many ordinary ones is a stretch without rows. */
const LONG_STEPS = 3.5;
const LEAST_STRETCHES = 3;

/**
 * Whether the file keeps a row only where a value changed, so that no row means "as before".
 *
 * It does where no row repeats the one before, there are stretches without rows, and behind each of them
 * the values have moved no farther than they do in one ordinary step: rows that were lost would leave a
 * wave that went on meanwhile.
 *
 * @param stamps - one a row, never falling.
 * @param columns - the columns of values, one value a row.
 */
function isKeptOnChange(stamps: Float64Array, columns: readonly Float64Array[]): boolean {
  const line = lineThroughEnds(stamps);
  if (line === null || isEven(stamps, line)) return false;
  for (let row = 1; row < stamps.length; row++) {
    if (columns.every((column) => column[row] === column[row - 1])) return false;
  }
  const longest = LONG_STEPS * stampSteps(stamps).median;
  const isLong = (row: number): boolean => stamps[row]! - stamps[row - 1]! > longest;
  let stretches = 0;
  for (let row = 1; row < stamps.length; row++) if (isLong(row)) stretches++;
  return stretches >= LEAST_STRETCHES && columns.every((column) => movesNoFarther(column, isLong));
}

/** Whether the column changes no more across the long steps than it does across the others. */
function movesNoFarther(column: Float64Array, isLong: (row: number) => boolean): boolean {
  let ordinary = 0;
  let long = 0;
  for (let row = 1; row < column.length; row++) {
    const change = Math.abs(column[row]! - column[row - 1]!);
    if (isLong(row)) long = Math.max(long, change);
    else ordinary = Math.max(ordinary, change);
  }
  // A missing value makes either NaN, and the answer no.
  return long <= ordinary;
}

/**
 * Rows that read as numbers and yet can't be placed: values without a time or number beside them, or with the
 * number of the row before. What stands in them may belong to another column, so nothing of them is taken.
 *
 * @param values - the columns of values; such rows become missing in them and in the axis column.
 * @returns all malformed rows, these among them.
 */
export function withBrokenRows(
  scanned: ScannedRows,
  { kind, column: axis }: AxisColumn,
  values: readonly Float64Array[],
): ScannedRows {
  if (axis === null) return scanned;
  const stamps = scanned.columns[axis.index]!;
  const known = new Set(scanned.malformed.map(({ row }) => row));
  const broken: MalformedRow[] = [];
  let previous = Number.NaN;
  for (let row = 0; row < scanned.rowCount; row++) {
    const stamp = stamps[row]!;
    const isRepeated = kind === 'index' && stamp === previous;
    if (!Number.isNaN(stamp)) previous = stamp;
    if (!Number.isNaN(stamp) && !isRepeated) continue;
    const value = values.find((column) => !Number.isNaN(column[row]!))?.[row];
    if (known.has(row) || (value === undefined && !isRepeated)) continue;
    const reason = isRepeated
      ? `the number ${stamp} again`
      : `no ${kind === 'index' ? 'number' : 'time'} beside ${value}`;
    broken.push({ row, line: scanned.lineOfRow(row), text: '', reason });
    stamps[row] = Number.NaN;
    for (const column of values) column[row] = Number.NaN;
  }
  if (broken.length === 0) return scanned;
  return { ...scanned, malformed: [...scanned.malformed, ...broken].sort((a, b) => a.row - b.row) };
}
