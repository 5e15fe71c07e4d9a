import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { type Capture, type ReadCaptureOptions, readCapture, readInChunks } from '../../entry/measuring.ts';
import {
  type ByteSource,
  chunkReader,
  type MeasureError,
  scanClaimedChunks,
  wordedError,
} from '../../entry/reading.ts';
import type { Task } from './heldCaptures.ts';

/** A smaller file is read whole. */
const IN_CHUNKS_FROM = 4 << 20;
const BLOCK_LENGTH = 1 << 20;
/** Shares of the work: the digest's, beside that of the reading. */
const DIGEST_SHARE = 0.4;

interface BlobCapture {
  readonly capture: Capture;
  /** Of the file's bytes, lower-case hexadecimal. */
  readonly sha256: string;
}

/**
 * Reads the capture that stands in a file: a small one whole, a large one in chunks, so that it never is in memory
 * as a whole and others are heard between chunks.
 *
 * @throws MeasureError as `readCapture` does; `Cancelled`.
 */
export async function readBlob(file: Blob, options: ReadCaptureOptions, task: Task): Promise<BlobCapture> {
  if (file.size < IN_CHUNKS_FROM) return readWhole(file, options);
  const source = blobSource(file);
  const digest = await digestOf(source, task);
  const capture = await readInChunks(source, {
    ...options,
    readChunks: (plan, board) => {
      let bytes = 0;
      const told = {
        byteLength: source.byteLength,
        read: (from: number, into: Uint8Array): number => {
          const count = source.read(from, into);
          bytes += count;
          task.tell(Math.min(1, DIGEST_SHARE + ((1 - DIGEST_SHARE) * bytes) / source.byteLength));
          return count;
        },
      };
      return scanClaimedChunks(chunkReader(told, plan), board, task.pause);
    },
  });
  return capture === null ? readWhole(file, options) : { capture, sha256: digest };
}

async function readWhole(file: Blob, options: ReadCaptureOptions): Promise<BlobCapture> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return { capture: readCapture(bytes, options), sha256: bytesToHex(sha256(bytes)) };
}

async function digestOf({ byteLength, read }: ByteSource, task: Task): Promise<string> {
  const hash = sha256.create();
  const block = new Uint8Array(BLOCK_LENGTH);
  for (let from = 0; from < byteLength; from += BLOCK_LENGTH) {
    hash.update(block.subarray(0, read(from, block)));
    task.tell((DIGEST_SHARE * from) / byteLength);
    await task.pause();
  }
  return bytesToHex(hash.digest());
}

/** A file that a person chose, as a source of bytes. Reading stops the thread: of use in a worker only. */
function blobSource(file: Blob): ByteSource {
  const reader = new FileReaderSync();
  return {
    byteLength: file.size,
    read: (from, into) => {
      const bytes = readPart(reader, file.slice(from, from + into.length));
      into.set(bytes);
      return bytes.length;
    },
  };
}

function readPart(reader: FileReaderSync, part: Blob): Uint8Array {
  try {
    return new Uint8Array(reader.readAsArrayBuffer(part));
  } catch (problem) {
    // The browser says no more than that: the file was changed, moved or locked since it was chosen.
    if (!(problem instanceof DOMException)) throw problem;
    throw unreadable();
  }
}

/** What a file that can't be read any more is refused with. */
export function unreadable(): MeasureError {
  return wordedError('file.unreadable', 'The file can’t be read.', {
    expected: 'the file as it was when it was chosen',
    received: 'one that was changed or moved since, or that this browser may not open',
    advice: 'choose it again',
  });
}
