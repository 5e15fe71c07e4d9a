import { isoTime } from './calendar.ts';
import type { StampColumn } from './cellReaders.ts';
import { logError } from './logErrors.ts';

export type TimeOrder = 'day-month' | 'month-day';

interface ChosenOrder {
  readonly order: TimeOrder;
  /** False where either order gives the same seconds, and the date is not known. */
  readonly isKnown: boolean;
}

/** Of the span that rows at their usual step cover: an order under which they cover less has holes of days. */
const COVERED = 0.8;
const MUCH_LESS = 0.5;

/**
 * Whether the day or the month comes first in a log's dates: told, or proved by a number above 12, or by rows that
 * follow each other at their usual step under one order only.
 *
 * @param seconds - of the day.
 * @throws MeasureError `log.time.order` where the log's seconds depend on it and nothing proves it.
 */
export function dayOrder(
  dates: StampColumn,
  seconds: Float64Array,
  told: TimeOrder | undefined,
): ChosenOrder {
  const { dayMonth, monthDay } = dates;
  let [dayFirst, monthFirst, isSame] = [true, true, true];
  for (let row = 0; row < seconds.length; row++) {
    if (Number.isNaN(seconds[row]!)) continue;
    if (Number.isNaN(dayMonth[row]!)) dayFirst = false;
    if (Number.isNaN(monthDay[row]!)) monthFirst = false;
    if (dayMonth[row] !== monthDay[row]) isSame = false;
  }
  if (isSame) return { order: 'day-month', isKnown: true };
  // A stray date that neither can be is a damaged one.
  if (dayFirst !== monthFirst) return { order: dayFirst ? 'day-month' : 'month-day', isKnown: true };
  if (told !== undefined) return { order: told, isKnown: true };

  const [first, second] = [courseOf(dayMonth, seconds), courseOf(monthDay, seconds)];
  if (first.offsets.every((offset, row) => offset === second.offsets[row]))
    return { order: 'day-month', isKnown: false };
  if (first.falls !== second.falls)
    return { order: first.falls < second.falls ? 'day-month' : 'month-day', isKnown: true };
  if (isCovered(first) && second.covered < MUCH_LESS) return { order: 'day-month', isKnown: true };
  if (isCovered(second) && first.covered < MUCH_LESS) return { order: 'month-day', isKnown: true };
  const row = dayMonth.findIndex((day, at) => !Number.isNaN(day + seconds[at]!));
  throw logError('log.time.order', {
    stamp: row < 0 ? '' : isoTime(86_400 * dayMonth[row]! + seconds[row]!, Number.NaN),
    durationsS: [first.spanS, second.spanS],
  });
}

interface Course {
  /** Days since the first row's. */
  readonly offsets: Float64Array;
  readonly spanS: number;
  readonly falls: number;
  /** Share of the span that the rows cover at their usual step, 0 and up. */
  readonly covered: number;
}

function isCovered({ covered }: Course): boolean {
  return covered >= COVERED;
}

function courseOf(days: Float64Array, seconds: Float64Array): Course {
  const start = days[0]!;
  const offsets = days.map((day) => day - start);
  const stamps = offsets.map((day, row) => 86_400 * day + seconds[row]!);
  let falls = 0;
  const steps: number[] = [];
  for (let row = 1; row < stamps.length; row++) {
    const step = stamps[row]! - stamps[row - 1]!;
    if (step < 0) falls++;
    else if (!Number.isNaN(step)) steps.push(step);
  }
  const spanS = stamps.at(-1)! - stamps[0]!;
  // The mean of the shorter nine tenths: stamps of whole minutes repeat, and their median may be zero.
  const shorter = Float64Array.from(steps)
    .sort()
    .subarray(0, Math.ceil(0.9 * steps.length));
  const usual = shorter.reduce((sum, step) => sum + step, 0) / Math.max(1, shorter.length);
  return { offsets, spanS, falls, covered: spanS <= 0 ? 0 : (usual * steps.length) / spanS };
}
