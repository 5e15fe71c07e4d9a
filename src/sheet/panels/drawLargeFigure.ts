import type { Figure } from '../../base/figure.ts';
import { boundText } from '../numbers/boundText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { cutText } from '../paper/cutText.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

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
