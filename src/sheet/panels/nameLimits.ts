import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { HarmonicLimits } from './harmonicLimits.ts';

const sizePx = 14;

/** Says what the ticks over the bars are, in the top right corner, where the high orders leave room. */
export function nameLimits(panel: Panel, limits: HarmonicLimits, box: Box): void {
  const memory = limits.provenance === 'memory' ? ', from memory' : '';
  const text = cutText(`limit in ${limits.source}${memory}`, 0.85 * box.width, sizePx);
  const right = box.x + box.width;
  const y = box.y + 10;
  writeText(panel, text, right, y, { sizePx, ink: palette.soft, anchor: 'end' });
  panel
    .append('path')
    .attr('d', `M${(right - textWidth(text, sizePx) - 18).toFixed(1)} ${y - 4.5}h11`)
    .attr('stroke', palette.ink)
    .attr('stroke-width', 1.6);
}
