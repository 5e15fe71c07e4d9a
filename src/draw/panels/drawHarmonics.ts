import { scaleLinear, scaleSqrt } from 'd3';
import { decimalText, significantText, withUnit } from '../../words/numbers.ts';
import { type Box, overlaps, type Room } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, type Panel, textWidth, writeHeading, writeText } from '../paper/writeText.ts';
import type { HarmonicLimits } from './harmonicLimits.ts';

const namedOrders = [2, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50] as const;
/** Values that the square-root axis may show; those too close to a neighbour are left out. */
const candidateTicks = [100, 50, 20, 10, 5, 2, 1, 0.5, 0.1, 0] as const;

/** Room left of the bars for the percents, above for the heading, below for the orders. */
const margin = { left: 48, top: 14, bottom: 22 } as const;

/**
 * Harmonics 2 and up as bars in percent of the fundamental, each with its limit as a tick across it.
 *
 * The axis goes by the square root: it starts at a true zero, as bars must, and still shows 0.1 % beside
 * 40 %. A logarithmic one has no zero, so a bar's length on it means nothing.
 *
 * @param box - its top is the heading's baseline.
 */
export function drawHarmonics(
  panel: Panel,
  harmonics: readonly HarmonicBar[],
  limits: HarmonicLimits | null,
  box: Box,
): void {
  const bars = harmonics.filter(({ order }) => order >= 2);
  if (bars.length === 0) {
    writeHeading(panel, 'Harmonics', 'none: they need a period', box.x, box.y, box.width);
    return;
  }
  const aside = '% of the fundamental, by order; square-root scale';
  writeHeading(panel, 'Harmonics', aside, box.x, box.y, box.width);
  const plot = {
    x: box.x + margin.left,
    y: box.y + margin.top,
    width: box.width - margin.left,
    height: box.height - margin.top - margin.bottom,
  };
  const base = plot.y + plot.height;
  const highestOrder = Math.max(50, ...bars.map(({ order }) => order));
  const limitOf = (order: number): number | undefined => limits?.limitPercent.get(order);
  const highest = Math.max(4, ...bars.flatMap(({ order, percent }) => [percent, limitOf(order) ?? 0]));
  const x = scaleLinear([1.5, highestOrder + 0.5], [plot.x, plot.x + plot.width]);
  // The top stays free for a bar's value and for the name of the limits.
  const y = scaleSqrt([0, highest], [base, plot.y + 32]);
  const barWidth = 0.62 * (x(3) - x(2));

  drawPercentAxis(panel, y, plot);
  for (const { order, percent } of bars) {
    const limit = limitOf(order);
    const left = x(order) - barWidth / 2;
    panel
      .append('rect')
      .attr('x', left.toFixed(1))
      .attr('y', y(percent).toFixed(1))
      .attr('width', barWidth.toFixed(1))
      .attr('height', (base - y(percent)).toFixed(1))
      .attr('fill', limit !== undefined && percent > limit ? palette.outside : palette.bar);
    if (limit === undefined) continue;
    panel
      .append('path')
      .attr('d', `M${(left - barWidth / 4).toFixed(1)} ${y(limit).toFixed(1)}h${(1.5 * barWidth).toFixed(1)}`)
      .attr('stroke', palette.ink)
      .attr('stroke-width', 1.6);
  }
  for (const order of namedOrders) {
    if (order > highestOrder) break;
    writeText(panel, String(order), x(order), base + 18, { sizePx: 14, ink: palette.soft, anchor: 'middle' });
  }
  nameBars(panel, bars, limitOf, x, y);
  if (limits !== null) nameLimits(panel, limits, plot);
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

/** One harmonic as a bar. */
interface HarmonicBar {
  readonly order: number;
  /** Of the fundamental, 0 and up. */
  readonly percent: number;
}

const sizePx = 14;
const wanted = 6;

/**
 * Writes the value above the bars that matter most (outside their limit first, then the largest), as many as
 * find room: a name that would touch another name, a bar or a limit's tick is left out.
 *
 * @param limitOf - percent; undefined where an order has no limit.
 */
function nameBars(
  panel: Panel,
  bars: readonly HarmonicBar[],
  limitOf: (order: number) => number | undefined,
  x: (order: number) => number,
  y: (percent: number) => number,
): void {
  const isOutside = ({ order, percent }: HarmonicBar): boolean => percent > (limitOf(order) ?? 100);
  const highest = Math.max(...bars.map(({ percent }) => percent));
  const telling = bars
    .filter((bar) => isOutside(bar) || (bar.percent >= 0.05 && bar.percent > highest / 4))
    .sort((a, b) => Number(isOutside(b)) - Number(isOutside(a)) || b.percent - a.percent);
  const taken: Room[] = [];
  for (const { order, percent } of bars) {
    const limit = limitOf(order);
    taken.push({ left: x(order) - 3, right: x(order) + 3, top: y(percent), bottom: y(0) });
    if (limit !== undefined) {
      taken.push({ left: x(order) - 4, right: x(order) + 4, top: y(limit) - 1, bottom: y(limit) + 1 });
    }
  }
  let named = 0;
  for (const bar of telling) {
    const weight = isOutside(bar) ? 600 : 400;
    const text = withUnit(decimalText(bar.percent, bar.percent < 1 ? 2 : 1), '%');
    const half = textWidth(text, sizePx, weight) / 2 + 2;
    const baseline = y(bar.percent) - 5;
    // The lowest orders stand at the axis: their names keep to its right.
    const at = Math.max(x(bar.order), x(1.5) + half);
    const room = { left: at - half, right: at + half, top: baseline - 0.72 * sizePx, bottom: baseline + 2 };
    if (taken.some((other) => overlaps(room, other))) continue;
    taken.push(room);
    const ink = isOutside(bar) ? palette.outside : palette.ink;
    writeText(panel, text, at, baseline, { sizePx, weight, ink, anchor: 'middle' });
    if (++named === wanted) return;
  }
}

/** Says what the ticks over the bars are, in the top right corner, where the high orders leave room. */
function nameLimits(panel: Panel, limits: HarmonicLimits, box: Box): void {
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
