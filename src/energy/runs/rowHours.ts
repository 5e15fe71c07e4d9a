import type { Course } from './course.ts';
import type { Run } from './runs.ts';

/**
 * For how long each row of a run stands, so that a quantity's integral is Σ hours · value.
 *
 * Instantaneous rows stand for half the interval to each side (trapezoid), means for the interval before them, held
 * values for the one behind. Beside another run, a row that is the last to show a load stands for half the interval
 * like any: the edge may lie anywhere in it. A hole that is counted belongs half to each of its ends; one that is
 * not, and the end of a part, to nobody.
 *
 * @param holes - all of the course.
 * @returns one entry a row of the run, in hours.
 */
export function rowHours(course: Course, run: Run, holes: ReadonlySet<number>): Float64Array {
  const { sampling } = course;
  const counted = new Set(run.holes);
  const hours = new Float64Array(run.last - run.first + 1);
  for (let at = run.first - 1; at <= run.last; at++) {
    if (holes.has(at) && !counted.has(at)) continue;
    const length = intervalHours(course, at);
    // A counter counts on where rows are missing.
    const [early, late] =
      counted.has(at) && course.from !== 'counter' ? SHARES.instantaneous : SHARES[sampling];
    if (at >= run.first) hours[at - run.first]! += early * length;
    if (at < run.last) hours[at + 1 - run.first]! += late * length;
  }
  return hours;
}

/** From row `at` to the next; 0 where a part ends. */
export function intervalHours({ timesS, partStarts }: Course, at: number): number {
  if (at < 0 || at + 1 >= timesS.length || isStart(partStarts, at + 1)) return 0;
  return (timesS[at + 1]! - timesS[at]!) / 3600;
}

/** What a quantity is in the mean from row `at` to the next. @param values - shape N of the course. */
export function intervalMean(
  { sampling }: Pick<Course, 'sampling'>,
  values: Float64Array,
  at: number,
): number {
  const [early, late] = SHARES[sampling];
  return early * values[at]! + late * values[at + 1]!;
}

/** What the rows at both ends of an interval stand for of it. */
const SHARES = {
  instantaneous: [0.5, 0.5],
  'mean until the row': [0, 1],
  'held from the row': [1, 0],
} as const;

function isStart(partStarts: readonly number[], row: number): boolean {
  let [low, high] = [0, partStarts.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (partStarts[middle]! <= row) low = middle;
    else high = middle - 1;
  }
  return partStarts[low] === row;
}
