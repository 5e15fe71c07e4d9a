import { cutText } from '../paper/cutText.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

const leading = 22;

/**
 * Names on the left, values on the right, a row each.
 *
 * @param y - baseline of the first row.
 * @returns the baseline that the next row would have.
 */
export function drawRows(
  panel: Panel,
  rows: readonly (readonly [name: string, value: string])[],
  x: number,
  y: number,
  width: number,
): number {
  rows.forEach(([name, value], i) => {
    const at = y + leading * i;
    const shown = cutText(value, 0.75 * width, 16);
    writeText(panel, shown, x + width, at, { sizePx: 16, anchor: 'end' });
    const room = width - textWidth(shown, 16) - 16;
    writeText(panel, cutText(name, room, 16), x, at, { sizePx: 16, ink: palette.soft });
  });
  return y + leading * rows.length;
}
