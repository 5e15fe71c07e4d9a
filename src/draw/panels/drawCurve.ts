import { line, type ScaleLinear } from 'd3';
import type { Panel } from '../paper/writeText.ts';

/** Draws samples against time as a line. */
export function drawCurve(
  panel: Panel,
  timeS: Float64Array,
  samples: Float64Array,
  time: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
  ink: string,
  widthPx: number,
): void {
  panel
    .append('path')
    .attr(
      'd',
      tracePath(
        timeS.map((t) => time(t)),
        samples.map((v) => value(v)),
      ),
    )
    .attr('fill', 'none')
    .attr('stroke', ink)
    .attr('stroke-width', widthPx)
    .attr('stroke-linejoin', 'round');
}

/**
 * An SVG path through samples; a gap (NaN) interrupts it.
 *
 * Where many samples share a column of pixels, the path keeps that column's first, lowest, highest and last
 * sample in their order: the picture is the same and the file stays small.
 *
 * @param x - px, ascending; shape N.
 * @param y - px; shape N, NaN where there is no value.
 */
export function tracePath(x: Float64Array, y: Float64Array): string {
  const width = (x.at(-1) ?? 0) - (x[0] ?? 0);
  const path = line<number>(
    (i) => x[i] ?? 0,
    (i) => y[i] ?? 0,
  )
    .defined((i) => Number.isFinite(y[i]))
    .digits(1);
  return path(columnExtremes(x, [y], Math.max(1, width))) ?? '';
}

/** Smallest and largest finite value of several arrays together; [−1, 1] where there is none. */
export function extentOf(...arrays: readonly Float64Array[]): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const array of arrays) {
    for (const value of array) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return low <= high ? [low, high] : [-1, 1];
}

/**
 * Which samples a picture needs: where many share one of its columns, that column's first and last and the
 * lowest and highest of every curve; all of them where there are few.
 *
 * @param x - where the samples stand, ascending; shape N.
 * @param curves - values there, shape N each; NaN where there is none.
 * @param columns - how many columns x is cut into, ≥ 1.
 * @returns indices, ascending, each once; at most 2 + 2 · curves a column.
 */
export function columnExtremes(
  x: ArrayLike<number>,
  curves: readonly ArrayLike<number>[],
  columns: number,
): number[] {
  const count = x.length;
  const start = x[0] ?? 0;
  const width = (x[count - 1] ?? 0) - start;
  if (count <= columns * (2 + 2 * curves.length) || !(width > 0))
    return Array.from({ length: count }, (_, i) => i);
  const columnOf = (i: number): number => Math.floor(((x[i]! - start) / width) * columns);
  const kept: number[] = [];
  for (let from = 0, to = 0; from < count; from = to) {
    const column = columnOf(from);
    while (to < count && columnOf(to) === column) to++;
    const extremes = curves.flatMap((curve) => lowestAndHighest(curve, from, to));
    kept.push(...[...new Set([from, ...extremes, to - 1])].sort((a, b) => a - b));
  }
  return kept;
}

/** Indices; `from` where the run holds no value. */
function lowestAndHighest(curve: ArrayLike<number>, from: number, to: number): [number, number] {
  let low = from;
  let high = from;
  for (let i = from; i < to; i++) {
    const value = curve[i]!;
    if (Number.isNaN(value)) continue;
    if (!(value >= curve[low]!)) low = i;
    if (!(value <= curve[high]!)) high = i;
  }
  return [low, high];
}
