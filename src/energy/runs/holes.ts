import { median } from '../../signal/statistics.ts';
import type { Course } from './course.ts';

/** An interval is a hole where it is longer than so many of those around it. Common practice, no source. */
const LEAST_INTERVALS = 5;
/** And longer by this than the next shorter one: a logger that is late now and then has no hole. */
const LEAST_BREAK = 2.5;
/** Intervals looked at on each side. */
const NEIGHBOURS = 10;
/** So many of a side make a raster. */
const LEAST_OF_A_SIDE = 3;

/**
 * Where rows are missing: intervals that agree with the raster on neither side.
 *
 * A log may have two rasters, a fast one after each change and a slow one: where the interval is like those on one
 * side, nothing is missing. And intervals may have a long tail, which is no hole: one stands apart from all that
 * are shorter. A log that writes on change alone has none that could be told.
 *
 * @returns ascending: i for the interval from row i to row i + 1 of the course.
 */
export function holesIn({ timesS, partStarts, sampling }: Course): readonly number[] {
  if (sampling === 'held from the row') return [];
  const long: { readonly at: number; readonly ratio: number }[] = [];
  partStarts.forEach((from, part) => {
    const end = partStarts[part + 1] ?? timesS.length;
    for (let at = from; at + 1 < end; at++) {
      const ratio = ratioToRaster(timesS, at, from, end);
      if (ratio > 1) long.push({ at, ratio });
    }
  });
  const ratios = long.map(({ ratio }) => ratio).sort((a, b) => a - b);
  const least = ratios.find((ratio, i) => ratio >= LEAST_BREAK * (i === 0 ? 1 : ratios[i - 1]!));
  if (least === undefined) return [];
  return long.filter(({ ratio }) => ratio > LEAST_INTERVALS && ratio >= least).map(({ at }) => at);
}

/** An interval over the longer of the rasters on its two sides; 1 where it plainly agrees with a neighbour. */
function ratioToRaster(timesS: Float64Array, at: number, from: number, end: number): number {
  const interval = (i: number): number => timesS[i + 1]! - timesS[i]!;
  const own = interval(at);
  const near = (i: number): number => (i < from || i + 1 >= end ? Number.NaN : interval(i));
  // Most intervals are like those around them, and need no median.
  if (![at - 4, at - 1, at + 1, at + 4].some((i) => own > 1.5 * near(i))) return 1;
  const side = (first: number, last: number): number => {
    const intervals: number[] = [];
    for (let i = Math.max(from, first); i <= Math.min(end - 2, last); i++) intervals.push(interval(i));
    return intervals.length < LEAST_OF_A_SIDE ? 0 : median(intervals);
  };
  const raster = Math.max(side(at - NEIGHBOURS, at - 1), side(at + 1, at + NEIGHBOURS));
  if (raster > 0) return own / raster;
  // A few rows: nothing but the others tells a raster.
  const all: number[] = [];
  for (let i = from; i + 1 < end; i++) if (i !== at) all.push(interval(i));
  return all.length < LEAST_OF_A_SIDE ? 1 : own / median(all);
}
