import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { writeLines } from '../paper/writeLines.ts';
import type { Panel } from '../paper/writeText.ts';

const sizePx = 14;
const leading = 17.5;
/** Longest a single note may get, so that one can't push out the others. */
const linesPerNote = 3;

/**
 * A heading and notes under it, each wrapped, as many as the box holds; how many are left out is said in the
 * heading.
 *
 * @param box - its top is the heading's baseline, its bottom the last baseline allowed.
 * @returns the y where the next block's heading may stand; unchanged where there is nothing to write.
 */
export function drawNotes(panel: Panel, heading: string, notes: readonly string[], box: Box): number {
  const { x, y, width, height } = box;
  if (notes.length === 0 || height < 24) return y;
  const room = Math.floor((height - 22) / leading) + 1;
  const lines: string[] = [];
  let written = 0;
  for (const note of notes) {
    const wrapped = wrapText(note, width, linesPerNote, sizePx);
    if (lines.length + wrapped.length > room) break;
    lines.push(...wrapped);
    written++;
  }
  const left = notes.length - written;
  writeHeading(panel, heading, left > 0 ? `${left} more in the JSON` : '', x, y, width);
  return writeLines(panel, lines, x, y + 22, leading, { sizePx, ink: palette.soft }) + 14;
}
