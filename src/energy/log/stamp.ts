import { powerOfTen } from '../../base/elementary.ts';
import { daysOf } from './calendar.ts';
import type { ClockWriting } from './logLayout.ts';

/** One stamp of a clock, read. Written over by the next. */
export interface Stamp {
  /** Days since 1 January 1970 with the day first, and with the month first; NaN: no such date; equal where the order is plain. */
  dayMonth: number;
  monthDay: number;
  /** Whether it has a date at all. */
  isDated: boolean;
  /** Whether it has a time of day, or is an elapsed time. */
  isTimed: boolean;
  /** Of the day, or since the start. In UTC where the stamp names its zone. */
  seconds: number;
  /** What its last digit tells apart, in seconds. */
  unitS: number;
  /** Minutes that the stamp's own clock is ahead of UTC; NaN: not named. */
  zoneMinutes: number;
  written: ClockWriting;
}

export function blankStamp(): Stamp {
  return {
    ...{ dayMonth: 0, monthDay: 0, isDated: false, isTimed: false, seconds: 0, unitS: 1 },
    ...{ zoneMinutes: Number.NaN, written: 'seconds' as const },
  };
}

/** @returns false where it is no date in either order. */
export function setDate(
  into: Stamp,
  a: number,
  b: number,
  c: number,
  yearFirst: boolean,
  yearLast: boolean,
  dayFirst: boolean,
): boolean {
  into.isDated = true;
  if (yearFirst) {
    into.dayMonth = into.monthDay = daysOf(a, b, c);
    into.written = 'ISO 8601';
    return !Number.isNaN(into.dayMonth);
  }
  const year = yearLast ? c : 2000 + c;
  if (!yearLast && c > 99) return false;
  into.dayMonth = daysOf(year, b, a);
  // Between points the day comes first, wherever such dates are written.
  into.monthDay = dayFirst ? into.dayMonth : daysOf(year, a, b);
  into.written = 'd/m/y';
  return !Number.isNaN(into.dayMonth) || !Number.isNaN(into.monthDay);
}

/** Zeros at its end tell nothing apart: whole seconds are often printed with six of them. */
export function fractionUnit(fraction: number, digits: number): number {
  let places = digits;
  let rest = fraction;
  while (places > 0 && rest % 10 === 0) {
    rest /= 10;
    places--;
  }
  return powerOfTen(-places);
}
