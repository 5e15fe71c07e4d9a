import { line, type ScaleLinear } from 'd3';
import { columnExtremes } from '../columnExtremes.ts';
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

/**
 * What a time axis shows of some waves: from a rising zero on, or from before it where a short record's wave begins there.
 *
 * @param times - each ascending; or cycles.
 */
export function spanOf(...times: readonly Float64Array[]): [number, number] {
  const from = Math.min(0, ...times.map((time) => time[0] ?? 0));
  const to = Math.max(...times.map((time) => time.at(-1) ?? 0));
  return [from, to > from ? to : from + 1];
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
