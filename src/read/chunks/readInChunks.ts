import type { Capture } from '../capture.ts';
import { captureOfRecord } from '../captureOfRecord.ts';
import { columnTrend } from '../columns/columnTrend.ts';
import {
  captureOfRows,
  type ReadBody,
  type ReadCaptureOptions,
  readBody,
  refuseSampleRate,
} from '../readCapture.ts';
import { checkRows, cutNotices, trimRows } from '../table/recordRows.ts';
import type { MalformedRow } from '../table/scanRows.ts';
import { type ByteSource, countUpTo } from '../text/textAccess.ts';
import { evenStamps, stampRun } from '../time/stampLine.ts';
import {
  chosenColumns,
  keepingOthers,
  type ReadingLengths,
  type ReadingPlan,
  readingPlan,
} from './readingPlan.ts';
import { type NumberedChunk, type SharedScanState, sharedScanState } from './scanClaimedChunks.ts';

interface ReadInChunksOptions extends ReadCaptureOptions {
  /**
   * Has every chunk of the body read (`chunkReader`, `readShare`), by one thread or several.
   *
   * @returns the chunks that all of them read.
   */
  readonly readChunks: (plan: ReadingPlan, board: SharedScanState) => Promise<readonly NumberedChunk[]>;
  /** Told once the layout is known, before rows are read; may throw where they would be too many. */
  readonly beforeRows?: (plan: ReadingPlan) => void;
  readonly lengths?: ReadingLengths;
}

/**
 * Reads what `readCapture` reads, to the last bit, from a file that is never wholly in memory: eight bytes a row
 * for each channel, and a constant.
 *
 * The time column is reduced to start and interval as it is read. Where that can't be done (rows lost or uneven, a
 * coarse clock, several records), the file is read once more for the column itself, and its time is worked out as
 * `readCapture` does, which takes eight bytes a row more and some copies of the time column.
 *
 * @returns null where the file can't be read in chunks (UTF-16, or too short): it is one for `readCapture`.
 * @throws MeasureError as `readCapture` does.
 * @throws RangeError where the sample rate is not positive and finite.
 */
export async function readInChunks(
  source: ByteSource,
  options: ReadInChunksOptions,
): Promise<Capture | null> {
  const { sampleRateHz, lengths } = options;
  refuseSampleRate(sampleRateHz);
  let plan = readingPlan(source, sampleRateHz, lengths);
  for (;;) {
    if (plan === null) return null;
    const body = await bodyOf(plan, options);
    if (!body.isUtf8) {
      plan = readingPlan(source, sampleRateHz, lengths, 'latin-1');
      continue;
    }
    if (!plan.uses.includes('stamps')) return captureOfBody(plan, body);
    const capture = captureOfEvenBody(plan, body);
    if (capture !== null) return capture;
    const others = await bodyOf(keepingOthers(plan), options);
    return captureOfBody(plan, {
      ...body,
      columns: body.columns.map((column, k) => column ?? others.columns[k]!),
    });
  }
}

async function bodyOf(plan: ReadingPlan, { readChunks, beforeRows }: ReadInChunksOptions): Promise<ReadBody> {
  beforeRows?.(plan);
  const tailRows = plan.tail.rowCount;
  for (let capacity = plan.estimatedRows + tailRows; ; ) {
    const board = sharedScanState(plan, capacity);
    const chunks = await readChunks(plan, board);
    const body = readBody(plan, board, chunks);
    if (body.rowCount + tailRows <= capacity) return body;
    // Rows turned out shorter than those sampled; now their number is known.
    capacity = body.rowCount + tailRows;
  }
}

/**
 * A capture from a body whose axis was reduced to its line: the same that all columns would give.
 *
 * @returns null where they are needed: the stamps are not surely even, the file holds more than one record, or
 * the columns turn out to be others than the first rows told.
 * @throws MeasureError as `readCapture` does, once the rows are found.
 */
function captureOfEvenBody({ layout, uses, tail }: ReadingPlan, body: ReadBody): Capture | null {
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

/**
 * A capture from a body of which every column was kept. What is done from here on is what `readCapture` does.
 *
 * @throws MeasureError as `readCapture` does, once the rows are found.
 */
function captureOfBody({ layout, tail }: ReadingPlan, body: ReadBody): Capture {
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
function tailMalformed(
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
