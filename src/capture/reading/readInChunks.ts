import type { ByteSource } from '../../bytes/byteSource.ts';
import type { Capture } from '../capture.ts';
import { type ReadCaptureOptions, refuseSampleRate } from '../readCapture.ts';
import { captureOfBody } from './captureOfBody.ts';
import { captureOfEvenBody } from './captureOfEvenBody.ts';
import { type ReadBody, readBody } from './readBody.ts';
import { keepingOthers, type ReadingLengths, type ReadingPlan, readingPlan } from './readingPlan.ts';
import type { NumberedChunk } from './readShare.ts';
import { type ScanBoard, scanBoard } from './scanBoard.ts';

export interface ReadInChunksOptions extends ReadCaptureOptions {
  /**
   * Has every chunk of the body read (`chunkReader`, `readShare`), by one thread or several.
   *
   * @returns the chunks that all of them read.
   */
  readonly readChunks: (plan: ReadingPlan, board: ScanBoard) => Promise<readonly NumberedChunk[]>;
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
    const board = scanBoard(plan, capacity);
    const chunks = await readChunks(plan, board);
    const body = readBody(plan, board, chunks);
    if (body.rowCount + tailRows <= capacity) return body;
    // Rows turned out shorter than those sampled; now their number is known.
    capacity = body.rowCount + tailRows;
  }
}
