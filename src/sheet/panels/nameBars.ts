import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { HarmonicBar } from './drawHarmonics.ts';
import type { HarmonicLimits } from './harmonicLimits.ts';

const sizePx = 14;

/**
 * Writes the value above the bars that matter most (outside their limit, else largest), as many as find
 * room beside each other.
 */
export function nameBars(
  panel: Panel,
  bars: readonly HarmonicBar[],
  limits: HarmonicLimits | null,
  x: (order: number) => number,
  y: (percent: number) => number,
): void {
  const limitOf = (order: number): number => limits?.limitPercent.get(order) ?? Number.POSITIVE_INFINITY;
  const telling = bars
    .filter(({ percent }) => percent >= 0.05)
    .sort(
      (a, b) =>
        Number(b.percent > limitOf(b.order)) - Number(a.percent > limitOf(a.order)) || b.percent - a.percent,
    )
    .slice(0, 5);
  const named: { from: number; to: number; top: number; bottom: number }[] = [];
  for (const { order, percent } of telling) {
    const limit = limitOf(order);
    const isOutside = percent > limit;
    const text = withUnit(significantText(percent, 2), '%');
    const top = Math.min(y(percent), Number.isFinite(limit) ? y(limit) : y(percent)) - 5;
    const half = textWidth(text, sizePx, isOutside ? 600 : 400) / 2;
    const room = { from: x(order) - half - 3, to: x(order) + half + 3, top: top - sizePx, bottom: top + 3 };
    const clash = (other: typeof room): boolean =>
      room.from < other.to && other.from < room.to && room.top < other.bottom && other.top < room.bottom;
    const crossed = bars.some(
      (bar) =>
        bar.order !== order &&
        x(bar.order) > room.from - 4 &&
        x(bar.order) < room.to + 4 &&
        y(Math.max(bar.percent, Math.min(limitOf(bar.order), 1e3))) < room.bottom,
    );
    if (named.some(clash) || (crossed && !isOutside)) continue;
    if (crossed) continue;
    named.push(room);
    writeText(panel, text, x(order), top, {
      sizePx,
      weight: isOutside ? 600 : 400,
      ink: isOutside ? palette.outside : palette.ink,
      anchor: 'middle',
    });
  }
}
