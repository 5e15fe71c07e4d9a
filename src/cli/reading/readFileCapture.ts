import { constants } from 'node:buffer';
import { open } from 'node:fs/promises';
import {
  type Capture,
  MeasureError,
  type ReadCaptureOptions,
  type ReadingPlan,
  readCapture,
  readInChunks,
  wordedError,
} from '../../entry/measuring.ts';
import { unreadable } from '../failures.ts';
import { FILE_READING, type FileReading, fileSource } from './fileSource.ts';
import { digest, readSized, regularFile } from './readText.ts';
import { readThreads } from './readThreads.ts';

/** A capture, and the fingerprint of the file that it was read from. */
export interface FileCapture {
  readonly capture: Capture;
  /** In hexadecimal digits. */
  readonly sha256: string;
}

/**
 * Reads the capture that stands in a file: a small one whole, a large one in chunks on the machine's cores.
 *
 * @throws MeasureError `file.unreadable`, `file.notRegular`, `file.tooLarge`, and as `readCapture` does.
 */
export async function readFileCapture(
  file: string,
  options: ReadCaptureOptions,
  given: Partial<FileReading> = {},
): Promise<FileCapture> {
  const reading = { ...FILE_READING, ...given };
  const { size } = await regularFile(file);
  return (
    (size < reading.inChunksFrom ? null : await readLarge(file, size, options, reading)) ??
    readWhole(file, size, options)
  );
}

async function readWhole(file: string, size: number, options: ReadCaptureOptions): Promise<FileCapture> {
  const bytes = await readSized(file, size);
  return { capture: readCapture(bytes, options), sha256: digest(bytes) };
}

async function readLarge(
  file: string,
  size: number,
  options: ReadCaptureOptions,
  { sharedFrom, workers, readSoFar }: FileReading,
): Promise<FileCapture | null> {
  const opened = await open(file).catch(throwUnreadable);
  const source = fileSource(opened.fd, size);
  const threads = readThreads(opened.fd, source, { workers: size < sharedFrom ? 0 : workers, readSoFar });
  try {
    const capture = await readInChunks(source, {
      ...options,
      readChunks: threads.readChunks,
      beforeRows: (plan) => refuseTooLarge(plan),
    });
    if (capture === null) {
      refuseTooLargeText(size);
      return null;
    }
    return { capture, sha256: await threads.sha256() };
  } catch (problem) {
    // What the system says while reading, such as of a folder.
    if (problem instanceof MeasureError || !(problem instanceof Error && 'syscall' in problem)) throw problem;
    throw unreadable(problem);
  } finally {
    await threads.end();
    await opened.close();
  }
}

function throwUnreadable(problem: unknown): never {
  throw unreadable(problem);
}

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
  throw wordedError('file.tooLarge', 'The file holds more rows than there is memory for.', {
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
  throw wordedError('file.tooLarge', 'The file is too large to be read in its encoding.', {
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
