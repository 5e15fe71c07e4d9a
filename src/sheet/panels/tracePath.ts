import { line } from 'd3';

/** Samples a column of pixels may hold before only its extremes are drawn. */
const samplesPerColumn = 4;

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
  const kept = x.length > samplesPerColumn * width ? columnExtremes(x, y) : Array.from(x.keys());
  const path = line<number>(
    (i) => x[i] ?? 0,
    (i) => y[i] ?? 0,
  )
    .defined((i) => Number.isFinite(y[i]))
    .digits(1);
  return path(kept) ?? '';
}

function columnExtremes(x: Float64Array, y: Float64Array): number[] {
  const kept: number[] = [];
  for (let from = 0, to = 0; from < x.length; from = to) {
    const column = Math.floor(x[from] ?? 0);
    let low = from;
    let high = from;
    for (to = from; to < x.length && Math.floor(x[to] ?? 0) === column; to++) {
      const value = y[to] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      if (!(value >= (y[low] ?? Number.NaN))) low = to;
      if (!(value <= (y[high] ?? Number.NaN))) high = to;
    }
    kept.push(...[...new Set([from, low, high, to - 1])].sort((a, b) => a - b));
  }
  return kept;
}
