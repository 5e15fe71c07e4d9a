import { countUpTo } from '../../bytes/countUpTo.ts';
import type { MalformedRow } from '../../bytes/scanRows.ts';
import type { Capture } from '../capture.ts';
import { captureOfRows } from './captureOfRows.ts';
import type { ReadBody } from './readBody.ts';
import type { ReadingPlan } from './readingPlan.ts';

/**
 * A capture from a body of which every column was kept. What is done from here on is what `readCapture` does.
 *
 * @throws MeasureError as `readCapture` does, once the rows are found.
 */
export function captureOfBody({ layout, tail }: ReadingPlan, body: ReadBody): Capture {
  const rowCount = body.rowCount + tail.rowCount;
  const columns = body.columns.map((column, k) => {
    column!.set(tail.columns[k]!, body.rowCount);
    return column!.subarray(0, rowCount);
  });
  const { bodyLine } = layout.table;
  return captureOfRows(layout, {
    rowCount,
    columns,
    malformed: [...body.malformed, ...tailMalformed(bodyLine, body, tail.malformed)],
    lineOfRow: (row) =>
      row < body.rowCount
        ? bodyLine + row + countUpTo(body.rowsBeforeEmptyLines, row)
        : bodyLine + body.lineCount + tail.lineOfRow(row - body.rowCount),
  });
}

/** As rows of the body and lines of the file. */
export function tailMalformed(
  bodyLine: number,
  { rowCount, lineCount }: ReadBody,
  malformed: readonly MalformedRow[],
): MalformedRow[] {
  return malformed.map(({ row, line, text }) => ({
    row: rowCount + row,
    line: bodyLine + lineCount + line,
    text,
  }));
}
