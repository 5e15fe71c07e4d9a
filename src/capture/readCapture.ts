import { decodeText } from '../bytes/decodeText.ts';
import { scanRows } from '../bytes/scanRows.ts';
import type { Capture } from './capture.ts';
import { captureOfRows } from './reading/captureOfRows.ts';
import { fileLayout } from './reading/fileLayout.ts';

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
