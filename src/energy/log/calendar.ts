const DAY_MS = 86_400_000;

/**
 * Days from 1 January 1970 to a date of the Gregorian calendar.
 *
 * @param month - from 1.
 * @returns NaN where there is no such date.
 */
export function daysOf(year: number, month: number, day: number): number {
  // `Date` takes years under 100 for those of the last century.
  if (!(year >= 100 && month >= 1 && month <= 12)) return Number.NaN;
  const first = Date.UTC(year, month - 1, 1);
  const length = (Date.UTC(year, month, 1) - first) / DAY_MS;
  return day >= 1 && day <= length ? first / DAY_MS + day - 1 : Number.NaN;
}

/**
 * A time as ISO 8601, to the millisecond.
 *
 * @param seconds - since 1970, of a clock that is so many minutes ahead of UTC; NaN: of an unknown one.
 */
export function isoTime(seconds: number, zoneMinutes: number): string {
  const isZoned = !Number.isNaN(zoneMinutes);
  const shown = new Date(Math.round(1000 * (seconds + (isZoned ? 60 * zoneMinutes : 0))));
  const local = shown.toISOString().replace(/(?:\.000)?Z$/, '');
  if (!isZoned) return local;
  if (zoneMinutes === 0) return `${local}Z`;
  const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  const size = Math.abs(zoneMinutes);
  return `${local}${zoneMinutes < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
}
