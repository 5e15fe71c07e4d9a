import { holdUnits } from '../numbers/holdUnits.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { writeLines } from '../paper/writeLines.ts';
import type { Panel } from '../paper/writeText.ts';

const headingHeight = 23;
/** Tried in this order: the first at which the paragraph fits, else the last with as many sentences as fit. */
const sizes = [
  { sizePx: 15, leading: 18.5 },
  { sizePx: 14, leading: 17 },
  { sizePx: 13, leading: 15.5 },
] as const;
const others = 'More in the page and the JSON.';

/**
 * A heading and sentences under it, run together so that they fill the column; those that there is no room for are left
 * out whole, and it is said that there are more.
 *
 * @param box - its top is the heading's baseline, its bottom the last baseline allowed.
 */
export function drawParagraph(panel: Panel, heading: string, sentences: readonly string[], box: Box): void {
  const { x, y, width, height } = box;
  const stopped = sentences.map((sentence) => sentence.replace(/[^.!?…]$/, '$&.'));
  for (let kept = stopped.length; kept >= 1; kept--) {
    const shown = kept === stopped.length ? stopped : [...stopped.slice(0, kept), others];
    const text = holdUnits(shown.join(' '));
    // Smaller type for all of it, but not for less.
    for (const { sizePx, leading } of kept === stopped.length ? sizes : sizes.slice(2)) {
      const lines = wrapText(text, width, Number.POSITIVE_INFINITY, sizePx);
      if (lines.length > Math.floor((height - headingHeight) / leading) + 1) continue;
      writeHeading(panel, heading, '', x, y, width);
      writeLines(panel, lines, x, y + headingHeight, leading, { sizePx, ink: palette.soft });
      return;
    }
  }
}
