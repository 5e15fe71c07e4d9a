import { scaleLinear, scaleSqrt } from 'd3';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { HarmonicLimits } from './harmonicLimits.ts';
import { nameBars } from './nameBars.ts';

export interface HarmonicBar {
  readonly order: number;
  readonly percent: number;
}

/** Values that the square-root axis may show; those too close to a neighbour are left out. */
const candidateTicks = [100, 50, 20, 10, 5, 2, 1, 0.5, 0.1, 0] as const;

/**
 * Harmonics 2 and up as bars in percent of the fundamental, each with its limit as a tick across it.
 *
 * The axis goes by the square root: it starts at a true zero, as bars must, and still shows 0.1 % beside
 * 40 %. A logarithmic one has no zero, so a bar's length on it means nothing.
 *
 * @param box - of the bars; the value axis stands left of it, the orders below.
 */
export function drawHarmonics(
  panel: Panel,
  harmonics: readonly HarmonicBar[],
  limits: HarmonicLimits | null,
  box: Box,
): void {
  const bars = harmonics.filter(({ order }) => order >= 2);
  const highestOrder = Math.max(50, ...bars.map(({ order }) => order));
  const x = scaleLinear([1.5, highestOrder + 0.5], [box.x, box.x + box.width]);
  const highest = Math.max(
    4,
    ...bars.map(({ percent }) => percent),
    ...(limits?.limitPercent.values() ?? []),
  );
  const y = scaleSqrt([0, highest * 1.25], [box.y + box.height, box.y]);
  const base = box.y + box.height;
  const barWidth = 0.62 * (x(3) - x(2));

  drawPercentAxis(panel, y, box);
  for (const { order, percent } of bars) {
    const limit = limits?.limitPercent.get(order);
    const isOutside = limit !== undefined && percent > limit;
    panel
      .append('rect')
      .attr('x', (x(order) - barWidth / 2).toFixed(1))
      .attr('y', y(percent).toFixed(1))
      .attr('width', barWidth.toFixed(1))
      .attr('height', (base - y(percent)).toFixed(1))
      .attr('fill', isOutside ? palette.outside : palette.wave);
  }
  for (const [order, limit] of limits?.limitPercent ?? []) {
    if (order > highestOrder) continue;
    panel
      .append('path')
      .attr(
        'd',
        `M${(x(order) - 0.75 * barWidth).toFixed(1)} ${y(limit).toFixed(1)}h${(1.5 * barWidth).toFixed(1)}`,
      )
      .attr('stroke', palette.ink)
      .attr('stroke-width', 1.6);
  }
  for (const order of [2, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50]) {
    if (order > highestOrder) break;
    writeText(panel, String(order), x(order), base + 18, { sizePx: 14, ink: palette.soft, anchor: 'middle' });
  }
  nameBars(panel, bars, limits, x, y);
}

function drawPercentAxis(panel: Panel, y: (percent: number) => number, box: Box): void {
  let last = Number.NEGATIVE_INFINITY;
  let first = true;
  for (const tick of candidateTicks) {
    const at = y(tick);
    if (at < box.y - 0.5 || at - last < 15 || (tick !== 0 && y(0) - at < 15)) continue;
    last = at;
    const text = significantText(tick, 3);
    writeText(panel, first ? withUnit(text, '%') : text, box.x - 10, at + 5, {
      sizePx: 14,
      ink: palette.soft,
      anchor: 'end',
    });
    first = false;
    panel
      .append('path')
      .attr('d', `M${box.x - 6} ${at.toFixed(1)}h${tick === 0 ? box.width + 6 : 5}`)
      .attr('stroke', palette.line);
  }
}
