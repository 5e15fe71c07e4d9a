import type { Figure } from '../../base/figure.ts';
import { withUnit } from '../../words/numbers.ts';
import { boundText, figureParts } from '../../words/quantities.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, type Panel, textWidth, writeHeading, writeText } from '../paper/writeText.ts';

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

/**
 * A heading and figures under it, a row each.
 *
 * @param box - its top is the heading's baseline.
 * @returns the y where the next block's heading may stand.
 */
export function drawFigureRows(
  panel: Panel,
  rows: readonly (readonly [name: string, value: string])[],
  { x, y, width }: Box,
): number {
  writeHeading(panel, 'Figures', 'each ± reads: about 95 % sure', x, y, width);
  return drawRows(panel, rows, x, y + 25, width) + 12;
}

/**
 * One figure in large type under its name, its uncertainty beside it.
 *
 * @param y - baseline of the name; the figure stands 32 px lower.
 */
export function drawLargeFigure(
  panel: Panel,
  name: string,
  figure: Figure,
  unit: string,
  x: number,
  y: number,
  width: number,
): void {
  writeText(panel, cutText(name, width, 15), x, y, { sizePx: 15, ink: palette.soft });
  if (figure.value === null) {
    writeText(panel, cutText('not measurable', width, 20), x, y + 30, { sizePx: 20, ink: palette.soft });
    return;
  }
  const parts = figureParts(figure);
  const doubt =
    figure.notAbove !== undefined
      ? `not above\u00a0${boundText(figure.notAbove)}`
      : parts.uncertainty === null
        ? ''
        : `±\u00a0${parts.uncertainty}`;
  // A number is never cut: what is left would be another number.
  const value = withUnit(parts.value, unit);
  const room = width - textWidth(doubt, 18) - 10;
  const sizePx = [30, 26, 22, 18, 14].find((size) => textWidth(value, size, 600) <= room) ?? 10;
  writeText(panel, value, x, y + 32, { sizePx, weight: 600 });
  writeText(panel, doubt, x + textWidth(value, sizePx, 600) + 10, y + 32, { sizePx: 18, ink: palette.soft });
}
