import { advanceWidths } from './advanceWidths.ts';
import type { TextWeight } from './textWeight.ts';

/** Assumed for a character outside the table, in thousandths of the size: wider than a Han character. */
const unknownWidth = 1200;

/**
 * Width of a line of text in the sheet's typeface: the sum of advance widths, without kerning.
 *
 * @param sizePx - font size in px of the sheet's own coordinates.
 * @returns px; characters the table doesn't hold count as wide.
 */
export function textWidth(text: string, sizePx: number, weight: TextWeight = 400): number {
  let thousandths = 0;
  for (const character of text) thousandths += advance(character.codePointAt(0) ?? 0, weight);
  return (thousandths / 1000) * sizePx;
}

function advance(codePoint: number, weight: TextWeight): number {
  for (const { from, widths } of advanceWidths[weight]) {
    if (codePoint < from) break;
    const width = widths[codePoint - from];
    if (width !== undefined && width > 0) return width;
  }
  return unknownWidth;
}
