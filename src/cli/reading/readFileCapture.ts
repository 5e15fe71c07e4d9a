import { open, readFile, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import {
  type Capture,
  MeasureError,
  type ReadCaptureOptions,
  readCapture,
  readInChunks,
} from '../../entry/measuring.ts';
import { digest } from '../digest.ts';
import { unreadable } from '../unreadable.ts';
import { fileSource } from './fileSource.ts';
import { readThreads } from './readThreads.ts';
import { refuseTooLarge, refuseTooLargeText } from './refuseTooLarge.ts';

/** A capture, and the fingerprint of the file that it was read from. */
export interface FileCapture {
  readonly capture: Capture;
  /** In hexadecimal digits. */
  readonly sha256: string;
}

/** How a file is read, by its length in bytes. */
export interface FileReading {
  /** A smaller file is read whole, and pays for none of what a large one takes. */
  readonly inChunksFrom: number;
  /** A worker takes some 30 ms to start, in which one thread reads as much as this. */
  readonly sharedFrom: number;
  /** Threads beside this one, at most. Each takes some memory of its own. */
  readonly workers: number;
}

const FILE_READING: FileReading = {
  inChunksFrom: 4 << 20,
  sharedFrom: 24 << 20,
  workers: Math.min(3, availableParallelism() - 1),
};

/**
 * Reads the capture that stands in a file: a small one whole, a large one in chunks on the machine's cores.
 *
 * @throws MeasureError `file.unreadable`, `file.tooLarge`, and as `readCapture` does.
 */
export async function readFileCapture(
  file: string,
  options: ReadCaptureOptions,
  given: Partial<FileReading> = {},
): Promise<FileCapture> {
  const reading = { ...FILE_READING, ...given };
  const { size } = await stat(file).catch(throwUnreadable);
  return (
    (size < reading.inChunksFrom ? null : await readLarge(file, size, options, reading)) ??
    readWhole(file, options)
  );
}

async function readWhole(file: string, options: ReadCaptureOptions): Promise<FileCapture> {
  const bytes = await readFile(file).catch(throwUnreadable);
  return { capture: readCapture(bytes, options), sha256: digest(bytes) };
}

async function readLarge(
  file: string,
  size: number,
  options: ReadCaptureOptions,
  { sharedFrom, workers }: FileReading,
): Promise<FileCapture | null> {
  const opened = await open(file).catch(throwUnreadable);
  const source = fileSource(opened.fd, size);
  const threads = readThreads(opened.fd, source, size < sharedFrom ? 0 : workers);
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
