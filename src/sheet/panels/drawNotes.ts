import { holdUnits } from '../numbers/holdUnits.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { writeLines } from '../paper/writeLines.ts';
import type { Panel } from '../paper/writeText.ts';

const gapBetweenNotes = 4;
const headingHeight = 23;
/** Tried in this order: the first at which every note fits, else the last. */
const sizes = [
  { sizePx: 15, leading: 18.5 },
  { sizePx: 14, leading: 17 },
] as const;

/**
 * A heading and notes under it, each whole, as many as the box holds; how many more stand elsewhere is said in the
 * heading. A note is never cut.
 *
 * @param notes - most important first: none stands before one that matters more.
 * @param box - its top is the heading's baseline, its bottom the last baseline allowed.
 * @returns the y where the next block's heading may stand; unchanged where there is nothing to write.
 */
export function drawNotes(panel: Panel, heading: string, notes: readonly string[], box: Box): number {
  const { x, y, width, height } = box;
  if (notes.length === 0 || height < 0) return y;
  const [large, small] = sizes;
  const size = wrapped(notes, box, large).length === notes.length ? large : small;
  const fitting = wrapped(notes, box, size);
  writeHeading(panel, heading, elsewhere(notes.length - fitting.length, fitting.length > 0), x, y, width);
  let baseline = y + headingHeight;
  for (const lines of fitting) {
    const style = { sizePx: size.sizePx, ink: palette.soft };
    baseline = writeLines(panel, lines, x, baseline, size.leading, style) + gapBetweenNotes;
  }
  return baseline + 12;
}

/** What a picture that has no room says of the rest; empty where nothing is left out. */
export function elsewhere(hidden: number, isMore = true): string {
  return hidden > 0 ? `${hidden}${isMore ? ' more' : ''} in the page and the JSON` : '';
}

/** The notes that fit, from the first on, as lines. */
function wrapped(
  notes: readonly string[],
  { width, height }: Box,
  { sizePx, leading }: (typeof sizes)[number],
): string[][] {
  const fitting: string[][] = [];
  let room = height - headingHeight + leading;
  for (const note of notes) {
    const lines = wrapText(holdUnits(note), width, Number.POSITIVE_INFINITY, sizePx);
    room -= lines.length * leading;
    if (room < 0) break;
    fitting.push(lines);
    room -= gapBetweenNotes;
  }
  return fitting;
}
