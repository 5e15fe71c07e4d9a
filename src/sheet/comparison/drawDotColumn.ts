import { type ScaleLinear, scaleLinear } from 'd3';
import type { MeasuredFigure } from '../../base/figure.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { strokePath } from '../paper/strokePath.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { DotColumn, DotRow } from './dotColumn.ts';

const radius = 5;
/** No load stands so far above the dots' middle, full load so far below; the text so far under the row's. */
const offset = 6;
const textOffset = 22;
/** The dots' middle stands above the row's, for the text under them. */
const dotRise = 4;
const lineReach = 12;

/**
 * One figure of all units: a pair of dots a row on one scale, with their uncertainty, joined, and their values below.
 *
 * @param middles - y of each row.
 * @param box - of the plot, without its heading and the values of its axis.
 */
export function drawDotColumn(panel: Panel, column: DotColumn, middles: readonly number[], box: Box): void {
  const { rows, limits, least, unit } = column;
  const figures = rows
    .flatMap(({ noLoad, fullLoad }) => [noLoad, fullLoad])
    .filter((figure) => figure !== null);
  const ends = figures.flatMap(({ value, uncertainty }) => [value - uncertainty, value + uncertainty]);
  const low = Math.min(least[0], ...(least[0] === 0 ? [] : ends));
  const x = scaleLinear(
    [low, Math.max(least[1], ...ends)],
    [box.x + radius + 2, box.x + box.width - radius - 2],
  );
  drawAxis(panel, x, box, unit);
  const levels = x.domain()[0]! < 0 ? [0, ...limits] : limits;
  rows.forEach((row, i) => {
    // Through the dots only: the text under them stays free.
    const d = (level: number): string =>
      `M${x(level).toFixed(1)} ${(middles[i]! - dotRise - lineReach).toFixed(1)}v${2 * lineReach}`;
    for (const level of levels) {
      if (level === 0) strokePath(panel, d(level), { ink: palette.line, widthPx: 1 });
      else strokePath(panel, d(level), { ink: palette.idealText, widthPx: 1.5, dash: '6 3' });
    }
    drawRow(panel, row, x, middles[i]!, box);
  });
}

function drawAxis(panel: Panel, x: ScaleLinear<number, number>, box: Box, unit: string): void {
  const bottom = box.y + box.height;
  const ticks = x.ticks(Math.max(2, Math.min(5, Math.round(box.width / 70))));
  for (const tick of ticks) {
    const at = x(tick).toFixed(1);
    strokePath(panel, `M${at} ${bottom}v5`, { ink: palette.line, widthPx: 1 });
    const text = significantText(tick, 4);
    const shown = tick === ticks.at(-1) ? withUnit(text, unit) : text;
    writeText(panel, shown, x(tick), bottom + 19, { sizePx: 14, ink: palette.soft, anchor: 'middle' });
  }
}

function drawRow(
  panel: Panel,
  { noLoad, fullLoad, text }: DotRow,
  x: ScaleLinear<number, number>,
  middle: number,
  box: Box,
): void {
  const dots = middle - dotRise;
  const upper = dots - offset;
  const lower = noLoad === null ? dots : dots + offset;
  if (noLoad !== null && fullLoad !== null) {
    const from = `M${x(noLoad.value).toFixed(1)} ${upper.toFixed(1)}`;
    strokePath(panel, `${from}L${x(fullLoad.value).toFixed(1)} ${lower.toFixed(1)}`, {
      ink: palette.bar,
      widthPx: 1.6,
    });
  }
  if (noLoad !== null) drawDot(panel, noLoad, x, upper, palette.paper);
  if (fullLoad !== null) drawDot(panel, fullLoad, x, lower, palette.wave);
  const shown = cutText(text, box.width, 14);
  writeText(panel, shown, box.x, middle + textOffset, { sizePx: 14, ink: palette.soft });
}

function drawDot(
  panel: Panel,
  { value, uncertainty }: MeasuredFigure,
  x: ScaleLinear<number, number>,
  y: number,
  fill: string,
): void {
  const [left] = x.range() as [number, number];
  // A figure that can't be negative may still have a bar that reaches below the scale's zero.
  const from = Math.max(left, x(value - uncertainty));
  strokePath(panel, `M${from.toFixed(1)} ${y.toFixed(1)}H${x(value + uncertainty).toFixed(1)}`, {
    ink: palette.wave,
    widthPx: 1.2,
  });
  panel
    .append('path')
    .attr(
      'd',
      `M${(x(value) - radius).toFixed(1)} ${y.toFixed(1)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`,
    )
    .attr('fill', fill)
    .attr('stroke', palette.wave)
    .attr('stroke-width', 1.8);
}
