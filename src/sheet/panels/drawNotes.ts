import { holdUnits } from '../numbers/holdUnits.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { writeLines } from '../paper/writeLines.ts';
import type { Panel } from '../paper/writeText.ts';

/** Longest a single note may get, so that one can't push out the others. */
const linesPerNote = 3;
const gapBetweenNotes = 4;
const headingHeight = 23;
/** Tried in this order: the first at which every note fits, else the last. */
const sizes = [
  { sizePx: 15, leading: 18.5 },
  { sizePx: 14, leading: 17 },
] as const;

/**
 * A heading and notes under it, each wrapped, as many as the box holds; how many are left out is said in the
 * heading.
 *
 * @param box - its top is the heading's baseline, its bottom the last baseline allowed.
 * @returns the y where the next block's heading may stand; unchanged where there is nothing to write.
 */
export function drawNotes(panel: Panel, heading: string, notes: readonly string[], box: Box): number {
  const { x, y, width, height } = box;
  if (notes.length === 0) return y;
  const [large, small] = sizes;
  const wrap = ({ sizePx, leading }: (typeof sizes)[number]): string[][] => {
    const wrapped = notes.map((note) => wrapText(holdUnits(note), width, linesPerNote, sizePx));
    let room = height - headingHeight + leading;
    return wrapped.filter((lines) => {
      room -= lines.length * leading + gapBetweenNotes;
      return room >= -gapBetweenNotes;
    });
  };
  const size = wrap(large).length === notes.length ? large : small;
  const fitting = wrap(size);
  const hidden = notes.length - fitting.length;
  if (fitting.length === 0) return y;
  writeHeading(panel, heading, hidden > 0 ? `${hidden} more not shown` : '', x, y, width);
  let baseline = y + headingHeight;
  for (const lines of fitting) {
    const style = { sizePx: size.sizePx, ink: palette.soft };
    baseline = writeLines(panel, lines, x, baseline, size.leading, style) + gapBetweenNotes;
  }
  return baseline + 12;
}
