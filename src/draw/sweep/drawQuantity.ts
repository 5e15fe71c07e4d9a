import { type ScaleLinear, scaleLinear } from 'd3';
import { drawValueAxis, type LineName, nameLines } from '../panels/axes.ts';
import { type Box, strokePath } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, writeHeading } from '../paper/writeText.ts';
import { halfBarOf, heightAt, heightOf, isOutside, nameValues } from './nameValues.ts';
import type { LimitLine, LoadPoint, QuantityAgainstLoad } from './sweepQuantities.ts';

/** Room left of a plot for its values, right for the names of its lines, above for its heading. */
export const plotMargin = { left: 58, right: 150, top: 14 } as const;
const radius = 4.5;

/**
 * One quantity against the load: dots with their uncertainty, joined by a hairline where the output was held, over the
 * limits as named lines.
 *
 * @param box - its top is the heading's baseline.
 */
export function drawQuantity(
  panel: Panel,
  quantity: QuantityAgainstLoad,
  load: ScaleLinear<number, number>,
  box: Box,
): void {
  const { name, aside, unit, points, limits, level, exit } = quantity;
  writeHeading(panel, name, aside, box.x, box.y, box.width);
  const plot = {
    x: box.x + plotMargin.left,
    y: box.y + plotMargin.top,
    width: box.width - plotMargin.left - plotMargin.right,
    height: box.height - plotMargin.top,
  };
  const value = scaleLinear(rangeOf(quantity), [plot.y + plot.height, plot.y]);
  drawValueAxis(panel, value, plot, unit, 34);

  const names: LineName[] = [];
  if (level !== null) {
    const y = value(level.value);
    strokePath(panel, `M${plot.x} ${y.toFixed(1)}h${plot.width}`, { ink: palette.line, widthPx: 1 });
    names.push({ text: level.name, y, ink: palette.soft });
  }
  for (const limit of limits) {
    const y = value(limit.value);
    strokePath(panel, `M${plot.x} ${y.toFixed(1)}h${plot.width}`, {
      ink: palette.idealText,
      widthPx: 1.6,
      dash: '7 4',
    });
    names.push({ text: limit.name, y, ink: palette.idealText });
  }
  nameLines(panel, names, plot, plotMargin.right);

  const held = points.filter(({ isLost }) => !isLost);
  const joined = held.map(
    ({ loadW, figure }) => `${load(loadW).toFixed(1)} ${value(heightOf(figure)).toFixed(1)}`,
  );
  if (joined.length > 1) strokePath(panel, `M${joined.join('L')}`, { ink: palette.bar, widthPx: 1.4 });
  for (const point of points) drawPoint(panel, point, limits, load, value);
  if (exit !== null && held.length > 0) drawExit(panel, load(exit.loadW), value(heightAt(held, exit.loadW)));
  nameValues(panel, quantity, load, value, plot);
}

/** A small cross on the line where it passes its limit. */
function drawExit(panel: Panel, x: number, y: number): void {
  strokePath(panel, cross(x, y, 5), { ink: palette.outside, widthPx: 2 });
}

/** The points with their bars, the limits and the level, with air around. */
function rangeOf({ points, limits, level }: QuantityAgainstLoad): [number, number] {
  const shown = [
    ...points.flatMap(({ figure }) => [
      heightOf(figure) - halfBarOf(figure),
      heightOf(figure) + halfBarOf(figure),
    ]),
    ...limits.map(({ value }) => value),
    ...(level === null ? [] : [level.value]),
  ];
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const isPositive = points.every(({ figure }) => heightOf(figure) >= 0);
  const air = 0.08 * (high - low) || 0.05 * Math.abs(high) || 1;
  // A figure that can't be negative may still have a bar that reaches below zero.
  return [isPositive ? Math.max(0, low - air) : low - air, high + 2.2 * air];
}

/**
 * A dot, filled below the rated load and hollow above it; a square in an ink of its own outside a limit; a triangle
 * that points down where only a bound is known; a cross where the output was lost.
 */
function drawPoint(
  panel: Panel,
  point: LoadPoint,
  limits: readonly LimitLine[],
  load: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
): void {
  const { loadW, figure, scatter, overload, isLost } = point;
  const outside = isLost || isOutside(point, limits);
  const ink = outside ? palette.outside : palette.wave;
  const [x, y] = [load(loadW), value(heightOf(figure))];
  const [base] = value.range() as [number, number];
  const bar = (half: number, widthPx: number): void => {
    const from = Math.min(base, value(figure.value - half));
    const d = `M${x.toFixed(1)} ${from.toFixed(1)}V${value(figure.value + half).toFixed(1)}`;
    strokePath(panel, d, { ink, widthPx });
  };
  const isBound = figure.notAbove !== undefined;
  if (halfBarOf(figure) > 0) bar(halfBarOf(figure), 1.2);
  if (scatter !== null && scatter > 0 && !isBound) bar(scatter, 4);
  if (isLost) {
    strokePath(panel, cross(x, y, 1.5 * radius), { ink, widthPx: 3 });
    return;
  }
  const shape = isBound ? triangle(x, y) : outside ? square(x, y) : circle(x, y);
  panel
    .append('path')
    .attr('d', shape)
    .attr('fill', overload ? palette.paper : ink)
    .attr('stroke', ink)
    .attr('stroke-width', 1.8);
}

function cross(x: number, y: number, reach: number): string {
  const across = 2 * reach;
  return `M${(x - reach).toFixed(1)} ${(y - reach).toFixed(1)}l${across} ${across}m0 ${-across}l${-across} ${across}`;
}

function circle(x: number, y: number): string {
  return `M${(x - radius).toFixed(1)} ${y.toFixed(1)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;
}

function square(x: number, y: number): string {
  return `M${(x - radius).toFixed(1)} ${(y - radius).toFixed(1)}h${2 * radius}v${2 * radius}h${-2 * radius}z`;
}

/** Its flat top on the bound. */
function triangle(x: number, y: number): string {
  return `M${(x - radius).toFixed(1)} ${y.toFixed(1)}h${2 * radius}l${-radius} ${2 * radius}z`;
}
