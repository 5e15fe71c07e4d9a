import type { Capture } from '../capture.ts';
import { columnTrend } from '../columns/columnTrend.ts';
import { checkRows } from '../rows/checkRows.ts';
import { cutNotices } from '../rows/recordRows.ts';
import { trimRows } from '../rows/trimRows.ts';
import { evenStamps } from '../time/evenStamps.ts';
import { stampRun } from '../time/stampRun.ts';
import { tailMalformed } from './captureOfBody.ts';
import { captureOfRecord } from './captureOfRecord.ts';
import { chosenColumns } from './chosenColumns.ts';
import type { ReadBody } from './readBody.ts';
import type { ReadingPlan } from './readingPlan.ts';

/**
 * A capture from a body whose axis was reduced to its line: the same that all columns would give.
 *
 * @returns null where they are needed: the stamps are not surely even, the file holds more than one record, or
 * the columns turn out to be others than the first rows told.
 * @throws MeasureError as `readCapture` does, once the rows are found.
 */
export function captureOfEvenBody({ layout, uses, tail }: ReadingPlan, body: ReadBody): Capture | null {
  const { table } = layout;
  const axisIndex = uses.indexOf('stamps');
  const read = uses.flatMap((use, k) => (use === 'checked' ? [] : [k]));
  const trimmed = trimRows(
    tail,
    layout.isCut,
    read.map((k) => tail.columns[k]!),
  );
  const rowCount = body.rowCount + trimmed.rowCount;
  const malformed = [...body.malformed, ...tailMalformed(table.bodyLine, body, trimmed.malformed)];
  const headerText = table.head.at(-1)?.text.trim();
  if (trimmed.rowCount === 0 || malformed.some(({ text }) => text.trim() === headerText)) return null;
  const runs = [...body.stamps, stampRun(tail.columns[axisIndex]!.subarray(0, trimmed.rowCount))];
  const stamps = evenStamps(runs);
  if (stamps === null) return null;
  // Rows without a time that aren't malformed already are broken if they hold a value.
  const timeless = runs.reduce((sum, run) => sum + run.rowCount - run.presentCount, 0);
  if (timeless > malformed.length) return null;

  const columns = body.columns.map((column, k) => {
    column?.set(tail.columns[k]!.subarray(0, trimmed.rowCount), body.rowCount);
    return column?.subarray(0, rowCount);
  });
  const trends = columns.map((column, k) =>
    // A column only checked has a head that tells what it is.
    k === axisIndex ? stamps : columnTrend(column ?? new Float64Array(0)),
  );
  const chosen = chosenColumns(layout, trends, []);
  const isAsPlanned =
    chosen.axis.column?.index === axisIndex && chosen.values.every((column) => uses[column.index] === 'kept');
  if (!isAsPlanned) return null;
  const { start, interval } = stamps.line;
  return captureOfRecord(layout, chosen, {
    rowCount,
    values: chosen.values.map((column) => columns[column.index]!),
    stamps: null,
    layRows: () => ({
      startS: start,
      intervalS: interval,
      sampleCount: rowCount,
      arrangement: { kind: 'as read' },
      isCoarse: false,
    }),
    notices: [...cutNotices(trimmed.droppedCount), ...checkRows(rowCount, malformed, table.bodyLine)],
  });
}
