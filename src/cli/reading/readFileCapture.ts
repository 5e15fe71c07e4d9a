import { createHash } from 'node:crypto';
import { open, readFile, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import {
  type Capture,
  MeasureError,
  type ReadCaptureOptions,
  readCapture,
  readInChunks,
} from '../../entry/measuring.ts';
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

/** A smaller file is read whole, and pays for none of what a large one takes. */
const IN_CHUNKS_FROM = 4 << 20;
/** A worker takes some 30 ms to start, in which one thread reads as much. */
const SHARED_FROM = 24 << 20;
/** Each takes some memory of its own. */
const MOST_WORKERS = 3;

/**
 * Reads the capture that stands in a file: a small one whole, a large one in chunks on the machine's cores.
 *
 * @param workers - threads beside this one, at most.
 * @throws MeasureError `file.unreadable`, `file.tooLarge`, and as `readCapture` does.
 */
export async function readFileCapture(
  file: string,
  options: ReadCaptureOptions,
  workers: number = Math.min(MOST_WORKERS, availableParallelism() - 1),
): Promise<FileCapture> {
  const { size } = await stat(file).catch(throwUnreadable);
  return (
    (size < IN_CHUNKS_FROM ? null : await readLarge(file, size, options, workers)) ?? readWhole(file, options)
  );
}

async function readWhole(file: string, options: ReadCaptureOptions): Promise<FileCapture> {
  const bytes = await readFile(file).catch(throwUnreadable);
  return { capture: readCapture(bytes, options), sha256: createHash('sha256').update(bytes).digest('hex') };
}

async function readLarge(
  file: string,
  size: number,
  options: ReadCaptureOptions,
  workers: number,
): Promise<FileCapture | null> {
  const opened = await open(file).catch(throwUnreadable);
  const source = fileSource(opened.fd, size);
  const threads = readThreads(opened.fd, source, size < SHARED_FROM ? 0 : workers);
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
