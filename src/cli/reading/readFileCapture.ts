import { open, readFile } from 'node:fs/promises';
import {
  type Capture,
  MeasureError,
  type ReadCaptureOptions,
  readCapture,
  readInChunks,
} from '../../entry/measuring.ts';
import { digest } from '../digest.ts';
import { unreadable } from '../unreadable.ts';
import { FILE_READING, type FileReading } from './fileReading.ts';
import { fileSource } from './fileSource.ts';
import { readThreads } from './readThreads.ts';
import { refuseTooLarge, refuseTooLargeText } from './refuseTooLarge.ts';
import { regularFile } from './regularFile.ts';

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
