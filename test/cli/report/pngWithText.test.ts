import { expect, test } from 'vitest';
import { renderPng } from '../../../src/cli/report/renderPng.ts';
import { pngWithText } from '../../../src/cli/report/sealedPng.ts';

const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 9"><rect width="8" height="9"/></svg>';

/** CRC of ISO 3309 as the PNG specification prints it (ISO/IEC 15948, Annex D), bit by bit. */
function crc(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) {
    c ^= byte;
    for (let k = 0; k < 8; k++) c = c & 1 ? (0xedb88320 ^ (c >>> 1)) >>> 0 : c >>> 1;
  }
  return (c ^ 0xffffffff) >>> 0;
}

test('every chunk keeps its length and checksum, and the text stands in one of its own after the header', () => {
  const png = Buffer.from(pngWithText(renderPng(svg, 64), 'Source', 'sineassay: capture abc'));
  const chunks: string[] = [];
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at);
    const body = png.subarray(at + 4, at + 8 + length);
    expect(png.readUInt32BE(at + 8 + length)).toBe(crc(body));
    chunks.push(body.toString('latin1', 0, body.length < 60 ? body.length : 4));
    at += 12 + length;
  }
  expect(chunks[0]).toMatch(/^IHDR/);
  expect(chunks[1]).toBe('tEXtSource\0sineassay: capture abc');
  expect(chunks.at(-1)).toBe('IEND');
});

test('the same sheet gives the same picture, byte for byte', () => {
  expect(Buffer.compare(renderPng(svg, 640), renderPng(svg, 640))).toBe(0);
});
