import type { Difference } from '../../bench/compare/compareDocument.ts';
import { differenceText } from '../answer/compare/differenceText.ts';
import { figureText } from '../numbers/figureText.ts';
import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

const leading = 42;
const sizePx = 15;

/**
 * The differences, two lines each: what, and how much; both values under it. As many as the box holds.
 *
 * @param box - its top is the heading's baseline.
 * @returns the y where the next block's heading may stand.
 */
export function drawDifferences(panel: Panel, differences: readonly Difference[], box: Box): number {
  const { x, y, width, height } = box;
  const room = Math.max(1, Math.floor((height - 10) / leading));
  const shown = differences.slice(0, room);
  const hidden = differences.length - shown.length;
  const aside = hidden > 0 ? `about 95 % sure; ${hidden} more in the JSON` : 'about 95 % sure';
  writeHeading(panel, 'What differs', aside, x, y, width);
  shown.forEach((difference, i) => {
    const at = y + 24 + leading * i;
    const { quantity, unit, a, b, significant } = difference;
    const differs = significant === true;
    const ink = differs ? palette.ink : palette.soft;
    const words = significant === null ? '' : differs ? 'differs ' : 'not told apart ';
    const right = `${words}${differenceText(difference)}`;
    const weight = differs ? 600 : 400;
    writeText(panel, cutText(quantity, 0.4 * width, sizePx, weight), x, at, { sizePx, weight, ink });
    const found = cutText(right, 0.58 * width, sizePx, weight);
    writeText(panel, found, x + width, at, { sizePx, weight, ink, anchor: 'end' });
    const values = `A ${figureText(a, unit)} · B ${figureText(b, unit)}`;
    writeText(panel, cutText(values, width, 14), x, at + 17, { sizePx: 14, ink: palette.soft });
  });
  return y + 24 + leading * shown.length + 12;
}
