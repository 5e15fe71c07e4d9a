import { line } from 'd3';
import { columnExtremes } from '../evidence/columnExtremes.ts';

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
