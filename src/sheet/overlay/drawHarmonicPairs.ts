import { scaleLinear, scaleSqrt } from 'd3';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

const highestOrder = 25;
const margin = { left: 48, top: 16, bottom: 22 } as const;

/** Percent of the fundamental by order. */
export type Percents = ReadonlyMap<number, number>;

/** The harmonics of a result's voltage, or of its current. */
export function percentsOf({ voltage, current }: MeasureResult): Percents {
  const harmonics: readonly { readonly order: number; readonly percent: number }[] =
    (voltage ?? current)?.harmonics ?? [];
  return new Map(harmonics.map(({ order, percent }) => [order, percent]));
}

/**
 * Harmonics 2 to 25 of both, side by side, on a square-root scale.
 *
 * @param box - its top is the heading's baseline.
 */
export function drawHarmonicPairs(panel: Panel, a: Percents, b: Percents, box: Box): void {
  const aside = '% of the fundamental, by order; A pale, B dark; square-root scale';
  writeHeading(panel, 'Harmonics', aside, box.x, box.y, box.width);
  const left = box.x + margin.left;
  const base = box.y + box.height - margin.bottom;
  const orders = Array.from({ length: highestOrder - 1 }, (_, i) => i + 2);
  const highest = Math.max(4, ...orders.flatMap((order) => [a.get(order) ?? 0, b.get(order) ?? 0]));
  const x = scaleLinear([1.5, highestOrder + 0.5], [left, box.x + box.width]);
  const y = scaleSqrt([0, highest], [base, box.y + margin.top]);
  const width = 0.36 * (x(3) - x(2));
  const bar = (percent: number | undefined, at: number, ink: string): void => {
    if (percent === undefined) return;
    panel
      .append('rect')
      .attr('x', at.toFixed(1))
      .attr('y', y(percent).toFixed(1))
      .attr('width', width.toFixed(1))
      .attr('height', (base - y(percent)).toFixed(1))
      .attr('fill', ink);
  };
  for (const order of orders) {
    bar(a.get(order), x(order) - width - 0.5, palette.ideal);
    bar(b.get(order), x(order) + 0.5, palette.wave);
    if (order % 2 === 1) {
      const style = { sizePx: 14, ink: palette.soft, anchor: 'middle' } as const;
      writeText(panel, String(order), x(order), base + 18, style);
    }
  }
  const ticks = [0, highest / 4, highest].map((tick) =>
    tick < 10 ? Number(tick.toPrecision(1)) : Math.floor(tick),
  );
  for (const tick of ticks) {
    const text = significantText(tick, 2);
    const style = { sizePx: 14, ink: palette.soft, anchor: 'end' } as const;
    writeText(panel, tick === ticks.at(-1) ? withUnit(text, '%') : text, left - 10, y(tick) + 5, style);
    const length = tick === 0 ? box.width - margin.left + 6 : 5;
    panel
      .append('path')
      .attr('d', `M${left - 6} ${y(tick).toFixed(1)}h${length}`)
      .attr('stroke', palette.line);
  }
}
