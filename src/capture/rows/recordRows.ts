import type { Notice } from '../../base/notice.ts';
import type { ScannedRows } from '../../bytes/scanRows.ts';
import { isKeptOnChange } from '../time/isKeptOnChange.ts';
import { checkRows } from './checkRows.ts';
import { firstSegment } from './firstSegment.ts';
import { trimRows } from './trimRows.ts';

/** The rows of one record: those from 0 to rowCount − 1. */
export interface RecordRows {
  readonly rowCount: number;
  /** Whether rows were kept only where a value changed. */
  readonly keptOnChange: boolean;
  readonly notices: readonly Notice[];
}

/** What tells where a record ends. */
export interface RecordEnds {
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

function segmentNotices(count: number): Notice[] {
  const message = `The file holds ${count} records one after the other: the first is read.`;
  return count === 1 ? [] : [{ code: 'segments.first', message }];
}

/** @param count - lines dropped behind the last whole row. */
export function cutNotices(count: number): Notice[] {
  const lines = count === 1 ? 'The last line is' : `The last ${count} lines are`;
  return count === 0
    ? []
    : [{ code: 'rows.cut', message: `${lines} cut off or no row of numbers, and left out.` }];
}
