import type { Notice } from '../../base/notice.ts';
import type { ScannedRows } from '../../bytes/scanRows.ts';
import type { Capture } from '../capture.ts';
import { columnTrend } from '../columns/columnTrend.ts';
import { unwrapCount } from '../columns/countsUp.ts';
import { withBrokenRows } from '../rows/brokenRows.ts';
import { recordRows } from '../rows/recordRows.ts';
import { stampedTimeBase } from '../time/stampedTimeBase.ts';
import { captureOfRecord } from './captureOfRecord.ts';
import { chosenColumns } from './chosenColumns.ts';
import type { FileLayout } from './fileLayout.ts';

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

function counterNotices(size: number | null): Notice[] {
  if (size === null) return [];
  const message = `The rows are numbered by a counter that starts anew after ${size}: they are taken as one record.`;
  return [{ code: 'rows.counter', message }];
}

/** A blank line between any two rows is how the file is written; a few of them may stand for lost values. */
const WRITTEN_SO = 0.5;

/** Where nothing but their order places the rows, a value that was lost moves all behind it. */
function blankLines(rowCount: number, lineOfRow: (row: number) => number): Notice[] {
  const count = lineOfRow(rowCount - 1) - lineOfRow(0) - (rowCount - 1);
  if (count === 0 || count > WRITTEN_SO * rowCount) return [];
  const lines = count === 1 ? 'One blank line stands' : `${count} blank lines stand`;
  return [
    {
      code: 'rows.blank',
      message: `${lines} between the values, which have no times: if a value was lost there, all behind it are measured too early.`,
    },
  ];
}
