import { decimalText } from '../numbers/decimalText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { palette } from '../paper/palette.ts';
import { overlaps, type Room } from '../paper/room.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { HarmonicBar } from './harmonicBar.ts';

const sizePx = 14;
const wanted = 6;

/**
 * Writes the value above the bars that matter most (outside their limit first, then the largest), as many as
 * find room: a name that would touch another name, a bar or a limit's tick is left out.
 *
 * @param limitOf - percent; undefined where an order has no limit.
 */
export function nameBars(
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
