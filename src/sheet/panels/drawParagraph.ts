import { holdUnits } from '../numbers/holdUnits.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { writeLines } from '../paper/writeLines.ts';
import type { Panel } from '../paper/writeText.ts';

const headingHeight = 23;
/** Tried in this order: the first at which the paragraph fits, else the last, cut. */
const sizes = [
  { sizePx: 15, leading: 18.5 },
  { sizePx: 14, leading: 17 },
  { sizePx: 13, leading: 15.5 },
] as const;

/**
 * A heading and sentences under it, run together so that they fill the column.
 *
 * @param box - its top is the heading's baseline, its bottom the last baseline allowed.
 */
export function drawParagraph(panel: Panel, heading: string, sentences: readonly string[], box: Box): void {
  const { x, y, width, height } = box;
  const text = holdUnits(sentences.map((sentence) => sentence.replace(/[^.!?…]$/, '$&.')).join(' '));
  const rows = ({ leading }: (typeof sizes)[number]): number =>
    Math.floor((height - headingHeight) / leading) + 1;
  const fits = (size: (typeof sizes)[number]): boolean =>
    wrapText(text, width, rows(size) + 1, size.sizePx).length <= rows(size);
  const size = sizes.find(fits) ?? sizes[2];
  if (text === '' || rows(size) < 1) return;
  writeHeading(panel, heading, '', x, y, width);
  const lines = wrapText(text, width, rows(size), size.sizePx);
  writeLines(panel, lines, x, y + headingHeight, size.leading, { sizePx: size.sizePx, ink: palette.soft });
}
