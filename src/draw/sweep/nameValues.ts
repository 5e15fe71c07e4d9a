import type { ScaleLinear } from 'd3';
import type { MeasuredFigure } from '../../base/figure.ts';
import { besideLimit, boundText } from '../../words/quantities.ts';
import { type Box, overlaps, type Room } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, textWidth, writeText } from '../paper/writeText.ts';
import type { LimitLine, LoadPoint, QuantityAgainstLoad } from './sweepQuantities.ts';

const labelPx = 14;

/** Writes values beside their dots, the ends of the sweep and its extremes first, where nothing is in the way. */
export function nameValues(
  panel: Panel,
  { points, limits, level, exit }: QuantityAgainstLoad,
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
      Math.max(6, Math.abs(value(heightOf(figure) + halfBarOf(figure)) - value(heightOf(figure)))),
    ];
    taken.push({
      left: x - 6,
      right: x + 6,
      top: value(heightOf(figure)) - half,
      bottom: value(heightOf(figure)) + half,
    });
  }
  const held = points.filter(({ isLost }) => !isLost);
  const corners = held.map(({ loadW, figure }) => [load(loadW), value(heightOf(figure))] as const);
  const byValue = [...points].sort((a, b) => heightOf(a.figure) - heightOf(b.figure));
  const telling = new Set([points[0], points.at(-1), byValue[0], byValue.at(-1), ...points]);
  const labels: Label[] = [...telling].flatMap((point) => {
    if (point === undefined) return [];
    const { value: measured, notAbove } = point.figure;
    return {
      text: notAbove === undefined ? besideLimit(measured, bounds) : `under ${boundText(notAbove)}`,
      ...{ x: load(point.loadW), y: value(heightOf(point.figure)) },
      ink: isOutside(point, limits) ? palette.outside : palette.ink,
    };
  });
  if (exit !== null && held.length > 0) {
    const at = { x: load(exit.loadW), y: value(heightAt(held, exit.loadW)) };
    labels.push({ text: exit.name, ...at, ink: palette.outside });
  }
  for (const { text, x, y, ink } of labels) {
    const width = textWidth(text, labelPx);
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
      writeText(panel, text, left, baseline, { sizePx: labelPx, ink });
      break;
    }
  }
}

interface Label {
  readonly text: string;
  /** Of what it names, px. */
  readonly x: number;
  readonly y: number;
  readonly ink: string;
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

/**
 * Height of the line through the points at a load, straight between its neighbours.
 *
 * @param points - ascending in load, at least one.
 */
export function heightAt(points: readonly LoadPoint[], loadW: number): number {
  const after = points.find((point) => point.loadW >= loadW) ?? points.at(-1)!;
  const before = [...points].reverse().find((point) => point.loadW <= loadW) ?? points[0]!;
  const width = after.loadW - before.loadW;
  const share = width > 0 ? (loadW - before.loadW) / width : 0;
  return heightOf(before.figure) + share * (heightOf(after.figure) - heightOf(before.figure));
}

/** Where a figure stands on its axis: a mere bound at the bound, since its value is no more than noise. */
export function heightOf({ value, notAbove }: MeasuredFigure): number {
  return notAbove ?? value;
}

/** Half of its bar; none for a bound, which holds its uncertainty already. */
export function halfBarOf({ uncertainty, notAbove }: MeasuredFigure): number {
  return notAbove === undefined ? uncertainty : 0;
}

/** True where a point's value lies beyond one of the limits. */
export function isOutside({ figure }: LoadPoint, limits: readonly LimitLine[]): boolean {
  return limits.some(({ value, side }) => (side === 'max' ? figure.value > value : figure.value < value));
}
