import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { FigureRow } from './stepFigureRows.ts';

const leading = 21;

/**
 * Names on the left, figures on the right, a row each.
 *
 * @param box - its top is the heading's baseline.
 * @returns the y where the next block's heading may stand.
 */
export function drawStepFigures(panel: Panel, rows: readonly FigureRow[], box: Box): number {
  const { x, y, width } = box;
  writeHeading(panel, 'Figures', 'each ± reads: about 95 % sure', x, y, width);
  rows.forEach(([name, value], i) => {
    const at = y + 25 + leading * i;
    const shown = cutText(value, 0.68 * width, 16);
    writeText(panel, shown, x + width, at, { sizePx: 16, anchor: 'end' });
    const room = width - textWidth(shown, 16) - 14;
    writeText(panel, cutText(name, room, 16), x, at, { sizePx: 16, ink: palette.soft });
  });
  return y + 25 + leading * rows.length + 14;
}
