import { createHash } from 'node:crypto';
import type { ByteSource } from '../../entry/reading.ts';

const BLOCK_LENGTH = 1 << 20;

/** The SHA-256 of a file, in hexadecimal digits. */
export function digestOf({ byteLength, read }: ByteSource): string {
  const hash = createHash('sha256');
  const block = new Uint8Array(BLOCK_LENGTH);
  for (let from = 0; from < byteLength; from += BLOCK_LENGTH) {
    hash.update(block.subarray(0, read(from, block)));
  }
  return hash.digest('hex');
}
