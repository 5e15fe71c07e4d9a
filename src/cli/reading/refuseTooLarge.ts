import { constants } from 'node:buffer';
import { MeasureError, type ReadingPlan } from '../../entry/measuring.ts';

/** Bytes of a sample of a channel that is kept. */
const SAMPLE_BYTES = 8;
/** The program itself, its threads, and what is measured beside the samples. */
const OTHER_BYTES = 160 * 2 ** 20;
/** A file that is held whole is there as bytes, as text and as numbers. */
const BYTES_A_BYTE = 4;

/**
 * Refuses a file whose samples the machine has no memory for, before any is read.
 *
 * @param available - bytes of memory that are free.
 * @throws MeasureError `file.tooLarge`.
 */
export function refuseTooLarge(
  { uses, estimatedRows }: Pick<ReadingPlan, 'uses' | 'estimatedRows'>,
  available: number = process.availableMemory(),
): void {
  const channels = uses.filter((use) => use === 'kept').length;
  const room = Math.floor(Math.max(0, available - OTHER_BYTES) / (SAMPLE_BYTES * channels));
  if (estimatedRows <= room) return;
  throw new MeasureError('file.tooLarge', 'The file holds more rows than there is memory for.', {
    expected: `at most ${rounded(room)} rows of ${channels === 1 ? 'one channel' : `${channels} channels`}, ${megabytes(available)} of memory being free`,
    received: `about ${rounded(estimatedRows)} rows, which take ${megabytes(estimatedRows * channels * SAMPLE_BYTES + OTHER_BYTES)}`,
    advice: 'save a shorter part of the record, or fewer channels; close other programs',
  });
}

/**
 * The same for a file that can only be read whole.
 *
 * @throws MeasureError `file.tooLarge`.
 */
export function refuseTooLargeText(byteLength: number, available: number = process.availableMemory()): void {
  const room = Math.min(constants.MAX_STRING_LENGTH, Math.floor(available / BYTES_A_BYTE));
  if (byteLength <= room) return;
  throw new MeasureError('file.tooLarge', 'The file is too large to be read in its encoding.', {
    expected: `at most ${megabytes(room)} of UTF-16`,
    received: megabytes(byteLength),
    advice: 'save it as plain text (ASCII or UTF-8), or a shorter part of the record',
  });
}

function rounded(count: number): string {
  return count < 1e6 ? String(Math.round(count / 1e3) * 1e3) : `${(count / 1e6).toPrecision(3)} million`;
}

function megabytes(bytes: number): string {
  return `${Math.ceil(bytes / 1e6)} MB`;
}
