import { createHash } from 'node:crypto';

/** SHA-256 of a text's UTF-8 bytes, or of bytes, lower-case hexadecimal. */
export function digest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}
