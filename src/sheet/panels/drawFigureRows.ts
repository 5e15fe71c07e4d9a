import type { Box } from '../paper/page.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawRows } from './drawRows.ts';

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
