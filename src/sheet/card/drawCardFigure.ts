import { boundText } from '../numbers/boundText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { cutText } from '../paper/cutText.ts';
import type { Inks } from '../paper/darkPalette.ts';
import type { Box } from '../paper/page.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { CardFigure } from './storyFigures.ts';

/** One number in very large type, its uncertainty beside it, its name below. */
export function drawCardFigure(
  panel: Panel,
  { name, figure, unit }: CardFigure,
  inks: Inks,
  { x, y, width }: Box,
): void {
  const baseline = y + 76;
  const soft = { ink: inks.soft };
  writeText(panel, cutText(name, width, 28), x, baseline + 38, { ...soft, sizePx: 28 });
  if (figure.value === null) {
    writeText(panel, 'not measurable', x, baseline, { ...soft, sizePx: 44 });
    return;
  }
  if (figure.notAbove !== undefined) {
    const value = withUnit(boundText(figure.notAbove), unit);
    const lead = 'under';
    writeText(panel, lead, x, baseline, { ...soft, sizePx: 36 });
    const after = x + textWidth(lead, 36) + 14;
    writeText(panel, value, after, baseline, { ink: inks.ink, sizePx: 84, weight: 600 });
    return;
  }
  const parts = figureParts(figure);
  const doubt = parts.uncertainty === null ? '' : `± ${parts.uncertainty}`;
  const value = withUnit(parts.value, unit);
  const room = width - textWidth(doubt, 34) - 16;
  // A number is never cut: what is left would be another number.
  const sizePx = [84, 72, 60, 48, 36].find((size) => textWidth(value, size, 600) <= room) ?? 28;
  writeText(panel, value, x, baseline, { ink: inks.ink, sizePx, weight: 600 });
  writeText(panel, doubt, x + textWidth(value, sizePx, 600) + 16, baseline, { ...soft, sizePx: 34 });
}
