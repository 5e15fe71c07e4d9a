import { type ScaleLinear, scaleLinear } from 'd3';
import { besideLimit } from '../numbers/besideLimit.ts';
import { boundText } from '../numbers/boundText.ts';
import { drawValueAxis } from '../panels/drawValueAxis.ts';
import { type LineName, nameLines } from '../panels/nameLines.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import type { LimitLine, LoadPoint, QuantityAgainstLoad } from './quantityAgainstLoad.ts';

/** Room left of a plot for its values, right for the names of its lines, above for its heading. */
export const plotMargin = { left: 58, right: 150, top: 14 } as const;
const radius = 4.5;
const labelPx = 14;

/**
 * One quantity against the load: dots with their uncertainty, joined by a hairline, over the limits as named lines.
 *
 * @param box - its top is the heading's baseline.
 */
export function drawQuantity(
  panel: Panel,
  quantity: QuantityAgainstLoad,
  load: ScaleLinear<number, number>,
  box: Box,
): void {
  const { name, aside, unit, points, limits, level } = quantity;
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
    drawLine(panel, `M${plot.x} ${y.toFixed(1)}h${plot.width}`, palette.line, 1);
    names.push({ text: level.name, y, ink: palette.soft });
  }
  for (const limit of limits) {
    const y = value(limit.value);
    drawLine(panel, `M${plot.x} ${y.toFixed(1)}h${plot.width}`, palette.idealText, 1.6, '7 4');
    names.push({ text: limit.name, y, ink: palette.idealText });
  }
  nameLines(panel, names, plot, plotMargin.right);

  const joined = points.map(
    ({ loadW, figure }) => `${load(loadW).toFixed(1)} ${value(figure.value).toFixed(1)}`,
  );
  if (joined.length > 1) drawLine(panel, `M${joined.join('L')}`, palette.bar, 1.4);
  for (const point of points) drawPoint(panel, point, limits, load, value);
  nameValues(panel, quantity, load, value, plot);
}

/** The points with their bars, the limits and the level, with air around. */
function rangeOf({ points, limits, level }: QuantityAgainstLoad): [number, number] {
  const shown = [
    ...points.flatMap(({ figure: { value, uncertainty } }) => [value - uncertainty, value + uncertainty]),
    ...limits.map(({ value }) => value),
    ...(level === null ? [] : [level.value]),
  ];
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const isPositive = points.every(({ figure }) => figure.value >= 0);
  const air = 0.08 * (high - low) || 0.05 * Math.abs(high) || 1;
  // A figure that can't be negative may still have a bar that reaches below zero.
  return [isPositive ? Math.max(0, low - air) : low - air, high + 2.2 * air];
}

function isOutside({ figure }: LoadPoint, limits: readonly LimitLine[]): boolean {
  return limits.some(({ value, side }) => (side === 'max' ? figure.value > value : figure.value < value));
}

/** A dot, filled below the rated load and hollow above it; a square in an ink of its own outside a limit. */
function drawPoint(
  panel: Panel,
  point: LoadPoint,
  limits: readonly LimitLine[],
  load: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
): void {
  const { loadW, figure, scatter, overload } = point;
  const outside = isOutside(point, limits);
  const ink = outside ? palette.outside : palette.wave;
  const [x, y] = [load(loadW), value(figure.value)];
  const [base] = value.range() as [number, number];
  const bar = (half: number, widthPx: number): void => {
    const from = Math.min(base, value(figure.value - half));
    const d = `M${x.toFixed(1)} ${from.toFixed(1)}V${value(figure.value + half).toFixed(1)}`;
    drawLine(panel, d, ink, widthPx);
  };
  if (figure.uncertainty > 0) bar(figure.uncertainty, 1.2);
  if (scatter !== null && scatter > 0) bar(scatter, 4);
  const shape = outside
    ? `M${(x - radius).toFixed(1)} ${(y - radius).toFixed(1)}h${2 * radius}v${2 * radius}h${-2 * radius}z`
    : `M${(x - radius).toFixed(1)} ${y.toFixed(1)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;
  panel
    .append('path')
    .attr('d', shape)
    .attr('fill', overload ? palette.paper : ink)
    .attr('stroke', ink)
    .attr('stroke-width', 1.8);
}

interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Writes values beside their dots, the ends of the sweep and its extremes first, where nothing is in the way. */
function nameValues(
  panel: Panel,
  { points, limits, level }: QuantityAgainstLoad,
  load: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
  plot: Box,
): void {
  const bounds = Object.fromEntries(limits.map((limit) => [limit.side, limit.value]));
  const taken: Room[] = [...limits, ...(level === null ? [] : [level])].map((line) => ({
    left: plot.x,
    right: plot.x + plot.width,
    top: value(line.value) - 2,
    bottom: value(line.value) + 2,
  }));
  for (const { loadW, figure } of points) {
    const [x, half] = [
      load(loadW),
      Math.max(6, Math.abs(value(figure.value + figure.uncertainty) - value(figure.value))),
    ];
    taken.push({
      left: x - 6,
      right: x + 6,
      top: value(figure.value) - half,
      bottom: value(figure.value) + half,
    });
  }
  const corners = points.map(({ loadW, figure }) => [load(loadW), value(figure.value)] as const);
  const byValue = [...points].sort((a, b) => a.figure.value - b.figure.value);
  const telling = new Set([points[0], points.at(-1), byValue[0], byValue.at(-1), ...points]);
  for (const point of telling) {
    if (point === undefined) continue;
    const { value: measured, notAbove } = point.figure;
    const text = notAbove === undefined ? besideLimit(measured, bounds) : `under ${boundText(notAbove)}`;
    const width = textWidth(text, labelPx);
    const [x, y] = [load(point.loadW), value(point.figure.value)];
    const places = [x + 9, x - 9 - width].flatMap((left) =>
      [y - 6, y + 16].map((baseline) => ({ left, baseline })),
    );
    for (const { left, baseline } of places) {
      const room = { left: left - 1, right: left + width + 1, top: baseline - 11, bottom: baseline + 3 };
      const isInside =
        room.left >= plot.x &&
        room.right <= plot.x + plot.width + 4 &&
        room.top >= plot.y &&
        room.bottom <= plot.y + plot.height;
      if (!isInside || taken.some((other) => overlaps(room, other)) || isCrossed(room, corners)) continue;
      taken.push(room);
      const ink = isOutside(point, limits) ? palette.outside : palette.ink;
      writeText(panel, text, left, baseline, { sizePx: labelPx, ink });
      break;
    }
  }
}

/** True where the line through the corners, ascending in x, passes through a room. */
function isCrossed(room: Room, corners: readonly (readonly [x: number, y: number])[]): boolean {
  return corners.some(([x1, y1], i) => {
    const [x0, y0] = corners[i - 1] ?? [x1, y1];
    const from = Math.max(x0, room.left);
    const to = Math.min(x1, room.right);
    if (from >= to) return false;
    const at = (x: number): number => y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
    return Math.max(at(from), at(to)) > room.top && Math.min(at(from), at(to)) < room.bottom;
  });
}

function overlaps(a: Room, b: Room): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function drawLine(panel: Panel, d: string, ink: string, widthPx: number, dash = ''): void {
  const path = panel
    .append('path')
    .attr('d', d)
    .attr('fill', 'none')
    .attr('stroke', ink)
    .attr('stroke-width', widthPx);
  if (dash !== '') path.attr('stroke-dasharray', dash);
}
