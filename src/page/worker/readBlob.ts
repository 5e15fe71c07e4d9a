import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { type Capture, type ReadCaptureOptions, readCapture, readInChunks } from '../../entry/measuring.ts';
import { type ByteSource, chunkReader, readShare } from '../../entry/reading.ts';
import { blobSource } from './blobSource.ts';
import type { Task } from './task.ts';

/** A smaller file is read whole. */
const IN_CHUNKS_FROM = 4 << 20;
const BLOCK_LENGTH = 1 << 20;
/** Shares of the work: the digest's, beside that of the reading. */
const DIGEST_SHARE = 0.4;

export interface BlobCapture {
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
      return readShare(chunkReader(told, plan), board, task.pause);
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
