import type { EnergyLog } from './energyLog.ts';

/** Fewer rows show no habit. */
const LEAST_ROWS = 30;
/** Of the steps: where so many are alike, the log has a raster. */
const RASTER_SHARE = 0.4;
/** Steps looked at, spread over the log. */
const LOOKED = 20_000;
/** A step counts as alike within a tenth, or within what a stamp tells apart. */
const ALIKE_WITHIN = 0.1;

/**
 * How a row stands for the time around it.
 *
 * A log that keeps a row only where a value changed has no raster, and no row that repeats the one before: there
 * each reading holds until the next.
 *
 * @param isMean - whether the column of power, or current, says that it holds means.
 * @param values - the readings that are kept, a column each.
 */
export function samplingOf(
  timesS: Float64Array,
  stepS: number,
  isMean: boolean,
  values: readonly Float64Array[],
): EnergyLog['sampling'] {
  if (isMean) return 'mean until the row';
  return isKeptOnChange(timesS, stepS, values) ? 'held from the row' : 'instantaneous';
}

function isKeptOnChange(timesS: Float64Array, stepS: number, values: readonly Float64Array[]): boolean {
  if (timesS.length < LEAST_ROWS || values.length === 0) return false;
  for (let row = 1; row < timesS.length; row++) {
    if (values.every((column) => isSame(column[row]!, column[row - 1]!))) return false;
  }
  const stride = Math.max(1, Math.floor(timesS.length / LOOKED));
  const steps: number[] = [];
  for (let row = 1; row < timesS.length; row += stride) {
    const step = timesS[row]! - timesS[row - 1]!;
    if (step > 0) steps.push(step);
  }
  const sorted = Float64Array.from(steps).sort();
  // The largest share of steps that lie within a tenth of each other.
  let share = 0;
  let to = 0;
  for (let from = 0; from < sorted.length; from++) {
    const most = Math.max(sorted[from]! * (1 + 2 * ALIKE_WITHIN), sorted[from]! + stepS);
    while (to < sorted.length && sorted[to]! <= most) to++;
    share = Math.max(share, (to - from) / sorted.length);
  }
  return share < RASTER_SHARE;
}

function isSame(a: number, b: number): boolean {
  return a === b || Number.isNaN(a);
}
