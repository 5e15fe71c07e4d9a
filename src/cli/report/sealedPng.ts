import { digest } from '../digest.ts';
import { pngWithText } from './pngWithText.ts';

const signature = Buffer.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
/** Signature and the header chunk, which comes first (ISO/IEC 15948, 5.2 and 11.2.2). */
const headerEnd = 8 + 12 + 13;
const keyword = 'Source';
const mark = ', sineassay-seal-';

/**
 * A PNG picture that says within what it is of, and carries the SHA-256 of both: by it a later run knows the picture
 * for its own.
 *
 * @param text - Latin-1.
 */
export function sealedPng(png: Uint8Array, text: string): Uint8Array {
  return pngWithText(png, keyword, `${text}${mark}${sealOf(png, text)}`);
}

/** Whether a picture is as it was sealed. */
export function isSealedPng(png: Buffer): boolean {
  if (png.length < headerEnd + 12) return false;
  const length = png.readUInt32BE(headerEnd);
  const end = headerEnd + 12 + length;
  if (end > png.length) return false;
  const content = png.toString('latin1', headerEnd + 4, headerEnd + 8 + length);
  const start = `tEXt${keyword}\0`;
  const at = content.lastIndexOf(mark);
  if (!content.startsWith(start) || at < 0) return false;
  const bare = Buffer.concat([png.subarray(0, headerEnd), png.subarray(end)]);
  return sealOf(bare, content.slice(start.length, at)) === content.slice(at + mark.length);
}

export function isPng(there: Buffer): boolean {
  return there.subarray(0, signature.length).equals(signature);
}

function sealOf(png: Uint8Array, text: string): string {
  return digest(Buffer.concat([png, Buffer.from(text, 'latin1')]));
}
