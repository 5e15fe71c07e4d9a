import { scaleLinear, scaleSqrt } from 'd3';
import type { MeasureResult } from '../../assay/measureDocument.ts';
import type { Difference } from '../../bench/compare/compareDocument.ts';
import { differenceText } from '../../words/compareLines.ts';
import { significantText, withUnit } from '../../words/numbers.ts';
import { figureText } from '../../words/quantities.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, type Panel, writeHeading, writeText } from '../paper/writeText.ts';

const highestOrder = 25;
const margin = { left: 48, top: 16, bottom: 22 } as const;

/** Percent of the fundamental by order. */
type Percents = ReadonlyMap<number, number>;

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
