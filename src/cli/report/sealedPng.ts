import { crc32 } from 'node:zlib';
import { digest } from '../reading/readText.ts';

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

/**
 * A PNG picture with a line of text in it that no viewer shows (chunk tEXt, ISO/IEC 15948, 11.3.4.3).
 *
 * @param keyword - 1 to 79 characters of Latin-1.
 * @param text - Latin-1.
 */
export function pngWithText(png: Uint8Array, keyword: string, text: string): Uint8Array {
  const content = Buffer.from(`tEXt${keyword}\0${text}`, 'latin1');
  const chunk = Buffer.alloc(content.length + 8);
  chunk.writeUInt32BE(content.length - 4, 0);
  content.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(content), content.length + 4);
  return Buffer.concat([png.subarray(0, headerEnd), chunk, png.subarray(headerEnd)]);
}

/** A sheet as a picture that says within which captures it is of. @param sha256 - of the captures. */
export async function picturePng(svg: string, sha256: readonly string[]): Promise<Uint8Array> {
  const { renderPng } = await import('./renderPng.ts');
  return sealedPng(renderPng(svg), `sineassay: capture with SHA-256 ${sha256.join(', ')}`);
}
