import { readFileSync } from 'node:fs';

/**
 * Advance widths of a TrueType font, read straight from its tables: `cmap` (format 4) for the glyph of a
 * character, `hmtx` for the glyph's width.
 *
 * @param path - a .ttf file.
 * @returns a function from code point to advance in font units (0 where the font has no glyph), and the units per em.
 * @see ISO/IEC 14496-22 (Open Font Format), tables head, hhea, hmtx, cmap.
 */
export function readAdvances(path: string): { unitsPerEm: number; advance: (codePoint: number) => number } {
  const bytes = readFileSync(path);
  const tables = new Map<string, number>();
  for (let i = 0; i < bytes.readUInt16BE(4); i++) {
    const entry = 12 + 16 * i;
    tables.set(bytes.toString('latin1', entry, entry + 4), bytes.readUInt32BE(entry + 8));
  }
  const start = (tag: string): number => {
    const offset = tables.get(tag);
    if (offset === undefined) throw new Error(`the font has no ${tag} table`);
    return offset;
  };
  const widthCount = bytes.readUInt16BE(start('hhea') + 34);
  const glyphOf = segmentMap(bytes, start('cmap'));
  const hmtx = start('hmtx');
  return {
    unitsPerEm: bytes.readUInt16BE(start('head') + 18),
    advance: (codePoint) => {
      const glyph = glyphOf(codePoint);
      return glyph === 0 ? 0 : bytes.readUInt16BE(hmtx + 4 * Math.min(glyph, widthCount - 1));
    },
  };
}

/** Glyph of a code point by the font's format-4 subtable; 0 where there is none. */
function segmentMap(bytes: Buffer, cmap: number): (codePoint: number) => number {
  for (let i = 0; i < bytes.readUInt16BE(cmap + 2); i++) {
    const table = cmap + bytes.readUInt32BE(cmap + 4 + 8 * i + 4);
    if (bytes.readUInt16BE(table) !== 4) continue;
    const segments = bytes.readUInt16BE(table + 6) / 2;
    const ends = table + 14;
    const starts = ends + 2 * segments + 2;
    const deltas = starts + 2 * segments;
    const offsets = deltas + 2 * segments;
    return (codePoint) => {
      for (let s = 0; s < segments; s++) {
        if (codePoint > bytes.readUInt16BE(ends + 2 * s)) continue;
        const first = bytes.readUInt16BE(starts + 2 * s);
        if (codePoint < first) return 0;
        const delta = bytes.readUInt16BE(deltas + 2 * s);
        const offset = bytes.readUInt16BE(offsets + 2 * s);
        if (offset === 0) return (codePoint + delta) & 0xffff;
        const glyph = bytes.readUInt16BE(offsets + 2 * s + offset + 2 * (codePoint - first));
        return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
      }
      return 0;
    };
  }
  throw new Error('the font has no format-4 character map');
}
