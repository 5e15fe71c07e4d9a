import { cutText } from './cutText.ts';
import { palette } from './palette.ts';
import { textWidth } from './textWidth.ts';
import { type Panel, writeText } from './writeText.ts';

/** A panel's heading, with an aside in small soft type after it; both on the baseline y. */
export function writeHeading(
  panel: Panel,
  heading: string,
  aside: string,
  x: number,
  y: number,
  widthPx: number,
): void {
  writeText(panel, heading, x, y, { sizePx: 17, weight: 600 });
  const asideX = x + textWidth(heading, 17, 600) + 12;
  writeText(panel, cutText(aside, x + widthPx - asideX, 14), asideX, y, { sizePx: 14, ink: palette.soft });
}
