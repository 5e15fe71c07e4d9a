import { crc32 } from 'node:zlib';

/** Signature and the header chunk, which comes first (ISO/IEC 15948, 5.2 and 11.2.2). */
const headerEnd = 8 + 12 + 13;

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
