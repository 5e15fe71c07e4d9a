import { describe, expect, it } from 'vitest';
import { renderPng } from '../../../src/cli/report/renderPng.ts';

const svg = (text: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1600 900"><text x="100" y="100" font-family="'Source Sans 3'" font-size="40">${text}</text></svg>`;

describe('renderPng', () => {
  it('makes a PNG of 1920 × 1080 from a sheet of 16 to 9', () => {
    const png = Buffer.from(renderPng(svg('sine')));
    // PNG signature, then the IHDR chunk with width and height (ISO/IEC 15948, 5.2 and 11.2.2).
    expect(png.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1920, 1080]);
  });

  it('sets text in the shipped typeface: a picture with text differs from one without', () => {
    expect(renderPng(svg('sine'), 320)).not.toEqual(renderPng(svg(''), 320));
  });
});
