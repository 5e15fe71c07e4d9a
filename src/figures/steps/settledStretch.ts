/** The end of a stretch of an envelope that stays at one level. */
export interface SettledStretch {
  /** First index that belongs to it. */
  readonly from: number;
  /** Last index, that of the stretch itself. */
  readonly last: number;
  readonly mean: number;
  /** False where it still moves at the end, or is too short to say: `mean` is then of the last values. */
  readonly settled: boolean;
}

/** Values that a level is told from, at least and at most: two cycles, and a second at 50 Hz. */
export const LEAST_VALUES = 4;
const MOST = 100;

/**
 * The settled end of values[from … last]: back from the end, as long as they stay within a band around what
 * the last quarter of them comes to.
 *
 * @param values - shape N, one each half cycle. Not changed.
 * @param band - half-width, in the unit of the values, > 0.
 * @param least - values that it needs; fewer than LEAST_VALUES only where the values begin behind a sharp edge.
 */
export function settledStretch(
  values: Float64Array,
  from: number,
  last: number,
  band: number,
  least: number = LEAST_VALUES,
): SettledStretch {
  const length = last + 1 - from;
  const tail = Math.min(length, MOST, Math.max(least, Math.ceil(length / 4)));
  const level = mean(values, last + 1 - tail, last);
  let start = last + 1;
  while (start > from && Math.abs(values[start - 1]! - level) <= band) start--;
  if (last + 1 - start < Math.min(least, length)) {
    return { from: last + 1 - tail, last, mean: level, settled: false };
  }
  // Two halves of the tail at different levels: it still creeps.
  const half = tail >> 1;
  const creep =
    half === 0 ? 0 : mean(values, last + 1 - half, last) - mean(values, last + 1 - tail, last - half);
  const stretch = Math.max(start, last + 1 - MOST);
  return { from: start, last, mean: mean(values, stretch, last), settled: Math.abs(creep) <= band };
}

function mean(values: Float64Array, from: number, last: number): number {
  let sum = 0;
  for (let k = from; k <= last; k++) sum += values[k]!;
  return sum / (last + 1 - from);
}
