import { bindUnits } from '../../words/numbers.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, wrapText, writeHeading, writeLines } from '../paper/writeText.ts';

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
    const lines = wrapText(bindUnits(note), width, Number.POSITIVE_INFINITY, sizePx);
    room -= lines.length * leading;
    if (room < 0) break;
    fitting.push(lines);
    room -= gapBetweenNotes;
  }
  return fitting;
}

/** Tried in this order: the first at which the paragraph fits, else the last with as many sentences as fit. */
const lineSizes = [
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
    const text = bindUnits(shown.join(' '));
    // Smaller type for all of it, but not for less.
    for (const { sizePx, leading } of kept === stopped.length ? lineSizes : lineSizes.slice(2)) {
      const lines = wrapText(text, width, Number.POSITIVE_INFINITY, sizePx);
      if (lines.length > Math.floor((height - headingHeight) / leading) + 1) continue;
      writeHeading(panel, heading, '', x, y, width);
      writeLines(panel, lines, x, y + headingHeight, leading, { sizePx, ink: palette.soft });
      return;
    }
  }
}
