import type { Capture } from './capture.ts';
import { captureOfRecord } from './captureOfRecord.ts';
import { chosenColumns, type FileLayout, fileLayout, type ReadingPlan } from './chunks/readingPlan.ts';
import type { NumberedChunk, SharedScanState } from './chunks/scanClaimedChunks.ts';
import { columnTrend, unwrapCount } from './columns/columnTrend.ts';
import type { ReadNotice } from './notices.ts';
import { recordRows, withBrokenRows } from './table/recordRows.ts';
import { type MalformedRow, type ScannedRows, scanRows } from './table/scanRows.ts';
import { decodeText } from './text/decodeText.ts';
import { stampedTimeBase } from './time/stampedTimeBase.ts';
import type { StampRun } from './time/stampLine.ts';

export interface ReadCaptureOptions {
  /** Samples per second, for a file that has no time of its own. */
  readonly sampleRateHz?: number;
}

/**
 * Reads an oscilloscope's or logger's export, whatever its layout: text, table, head, columns, rows,
 * time, channels, each step knowing only what the one before it found.
 *
 * @param bytes - the whole file. Not changed.
 * @returns a checked capture; what is doubtful about it stands in its notices.
 * @throws MeasureError where it can't be read: `file.empty`, `file.foreign`, `file.binary`,
 * `file.spectrum`, `rows.none`, `rows.few`, `rows.malformed`, `time.none`, `time.still`,
 * `time.backwards`, `time.uneven`, `time.absurd`, `columns.many`, `channels.none`, `values.none`.
 * @throws RangeError where the sample rate is not positive and finite.
 * @remarks The file and its text are in memory whole; `readInChunks` reads the same from a file that is not.
 */
export function readCapture(bytes: Uint8Array, { sampleRateHz }: ReadCaptureOptions = {}): Capture {
  refuseSampleRate(sampleRateHz);
  const { text, encoding } = decodeText(bytes);
  const layout = fileLayout(text, encoding, sampleRateHz);
  return captureOfRows(layout, scanRows(text, layout.table));
}

/** @throws RangeError where there is one that is not positive and finite. */
export function refuseSampleRate(sampleRateHz: number | undefined): void {
  if (sampleRateHz !== undefined && !(sampleRateHz > 0 && sampleRateHz < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`sampleRateHz must be positive and finite, not ${sampleRateHz}`);
  }
}

/**
 * A capture from all columns of a file, whatever its time does: rows may be missing, kept on change, uneven, or
 * belong to several records.
 *
 * @param found - its columns may be changed.
 * @throws MeasureError as `readCapture` does, once the rows are found.
 */
export function captureOfRows(layout: FileLayout, found: ScannedRows): Capture {
  const { columns, lineOfRow } = found;
  const chosen = chosenColumns(layout, columns.map(columnTrend), columns);
  const { axis, values } = chosen;
  const axisRows = axis.column === null ? null : columns[axis.column.index]!;
  // A time beyond a range is none.
  axisRows?.forEach((stamp, row) => {
    if (!Number.isFinite(stamp)) axisRows[row] = Number.NaN;
  });
  const valueRows = values.map((column) => columns[column.index]!);
  const counterSize = axis.kind === 'index' && axisRows !== null ? unwrapCount(axisRows, valueRows) : null;
  const scanned = withBrokenRows(found, axis, valueRows);
  const { rowCount, keptOnChange, notices } = recordRows(scanned, {
    isCut: layout.isCut,
    stamps: axisRows,
    values: valueRows,
    headerText: layout.table.head.at(-1)?.text ?? null,
    firstLine: layout.table.bodyLine,
  });
  const stamps = axisRows?.subarray(0, rowCount) ?? null;
  const digits = axis.column === null ? undefined : layout.digitsOf(axis.column.column);
  return captureOfRecord(layout, chosen, {
    rowCount,
    values: valueRows.map((column) => column.subarray(0, rowCount)),
    stamps,
    layRows:
      stamps === null
        ? null
        : (resolution) => stampedTimeBase(stamps, resolution, lineOfRow, keptOnChange, digits),
    notices: [
      ...notices,
      ...counterNotices(counterSize),
      ...(axis.kind === 'rows' ? blankLines(rowCount, lineOfRow) : []),
    ],
  });
}

function counterNotices(size: number | null): ReadNotice[] {
  return size === null ? [] : [{ code: 'rows.counter', size }];
}

/** A blank line between any two rows is how the file is written; a few of them may stand for lost values. */
const WRITTEN_SO = 0.5;

/** Where nothing but their order places the rows, a value that was lost moves all behind it. */
function blankLines(rowCount: number, lineOfRow: (row: number) => number): ReadNotice[] {
  const count = lineOfRow(rowCount - 1) - lineOfRow(0) - (rowCount - 1);
  return count === 0 || count > WRITTEN_SO * rowCount ? [] : [{ code: 'rows.blank', lines: count }];
}

/** All rows of a file but those of its tail, and room behind them for those. */
export interface ReadBody {
  readonly rowCount: number;
  readonly lineCount: number;
  /** One array for each of the table's columns, with room for the tail's rows; null where a column is not kept. */
  readonly columns: readonly (Float64Array | null)[];
  /** Rows of the body and lines of the file. */
  readonly malformed: readonly MalformedRow[];
  /** For each line without content: how many rows stand before it. */
  readonly rowsBeforeEmptyLines: readonly number[];
  readonly stamps: readonly StampRun[];
  readonly isUtf8: boolean;
}

/** Puts together what the threads read. @param chunks - all of them, in any order. */
export function readBody(
  plan: ReadingPlan,
  board: SharedScanState,
  chunks: readonly NumberedChunk[],
): ReadBody {
  const malformed: MalformedRow[] = [];
  const rowsBeforeEmptyLines: number[] = [];
  const stamps: StampRun[] = [];
  let rowCount = 0;
  let lineCount = 0;
  for (const chunk of [...chunks].sort((a, b) => a.chunk - b.chunk)) {
    for (const { row, line, text } of chunk.malformed) {
      malformed.push({ row: rowCount + row, line: plan.layout.table.bodyLine + lineCount + line, text });
    }
    for (const rows of chunk.rowsBeforeEmptyLines) rowsBeforeEmptyLines.push(rowCount + rows);
    if (chunk.stamps !== null) stamps.push(chunk.stamps);
    rowCount += chunk.rowCount;
    lineCount += chunk.lineCount;
  }
  const isUtf8 = chunks.every((chunk) => chunk.isUtf8);
  return { rowCount, lineCount, columns: board.columns, malformed, rowsBeforeEmptyLines, stamps, isUtf8 };
}
