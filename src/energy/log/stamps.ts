import { powerOfTen } from '../../base/elementary.ts';
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

/**
 * Reads a stamp of time: `0:01`, `12:00:05.250`, `01:02:03:456`, `2 days 03:04:05`, `1h 2m 3s`, ISO 8601, dates with
 * either order, names of months, AM and PM.
 *
 * @param into - filled; what was in it is gone.
 * @param from - half-open with `to`: where the stamp stands in the text.
 * @returns false where the text is none: a plain number is none either.
 */
export function readStamp(text: string, into: Stamp, from = 0, to: number = text.length): boolean {
  const length = to - from;
  if (length < 3 || length > 48) return false;
  into.isDated = false;
  into.isTimed = false;
  into.dayMonth = 0;
  into.monthDay = 0;
  into.seconds = 0;
  into.unitS = 86_400;
  into.zoneMinutes = Number.NaN;
  return readPlainStamp(text, into, from, to) || readWordyStamp(text.slice(from, to), into);
}

const DASH = 45;
const DOT = 46;
const SLASH = 47;
const COLON = 58;
const COMMA = 44;

const values = new Float64Array(8);
const lengths = new Int32Array(8);
const marks = new Int32Array(8);

/** Digits and marks only, perhaps a `T` before the time: nearly every stamp, without a pattern. */
function readPlainStamp(text: string, into: Stamp, from: number, to: number): boolean {
  const count = digitRuns(text, from, to);
  if (count < 2) return false;
  let at = 0;
  const mark = marks[0]!;
  if (mark === DASH || mark === SLASH || mark === DOT) {
    if (count < 3 || marks[1] !== mark) return false;
    if (!setDate(into, values[0]!, values[1]!, values[2]!, lengths[0] === 4, lengths[2] === 4, mark === DOT))
      return false;
    if (count === 3) return true;
    at = 3;
  }
  return setTime(into, at, count);
}

/** @returns how many runs of digits; 0 where anything else stands between them than one mark. */
function digitRuns(text: string, from: number, to: number): number {
  let count = 0;
  let value = 0;
  let length = 0;
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i);
    const digit = code - 48;
    if (digit >= 0 && digit <= 9) {
      value = value * 10 + digit;
      length++;
      continue;
    }
    const isMark =
      code === COLON ||
      code === DASH ||
      code === DOT ||
      code === SLASH ||
      code === 32 ||
      code === 84 ||
      code === COMMA;
    if (length === 0 || !isMark || count === 7) return 0;
    values[count] = value;
    lengths[count] = length;
    marks[count++] = code;
    value = 0;
    length = 0;
  }
  if (length === 0) return 0;
  values[count] = value;
  lengths[count] = length;
  marks[count] = 0;
  return count + 1;
}

/** The runs of digits from one on as hours, minutes, seconds and their fraction. */
function setTime(into: Stamp, at: number, count: number): boolean {
  const runs = count - at;
  if (runs < 2 || marks[at] !== COLON || lengths[at + 1] !== 2 || values[at + 1]! > 59) return false;
  if (into.isDated && values[at]! > 24) return false;
  into.isTimed = true;
  const minutes = values[at]! * 60 + values[at + 1]!;
  if (runs === 2) {
    into.seconds += minutes * 60;
    into.unitS = 60;
    if (!into.isDated) into.written = 'H:MM';
    return true;
  }
  // A leap second is one.
  if (marks[at + 1] !== COLON || lengths[at + 2] !== 2 || values[at + 2]! > 60 || runs > 4) return false;
  into.seconds += minutes * 60 + values[at + 2]!;
  into.unitS = 1;
  if (!into.isDated) into.written = 'H:MM:SS';
  if (runs === 4) {
    const mark = marks[at + 2];
    if (mark !== DOT && mark !== COMMA && mark !== COLON) return false;
    // Thousandths behind a colon, whatever their digits.
    const digits = mark === COLON ? 3 : lengths[at + 3]!;
    const fraction = values[at + 3]!;
    into.seconds += fraction / powerOfTen(digits);
    into.unitS = fractionUnit(fraction, digits);
    if (mark === COLON && !into.isDated) into.written = 'H:MM:SS:mmm';
  }
  return true;
}

/** Zeros at its end tell nothing apart: whole seconds are often printed with six of them. */
function fractionUnit(fraction: number, digits: number): number {
  let places = digits;
  let rest = fraction;
  while (places > 0 && rest % 10 === 0) {
    rest /= 10;
    places--;
  }
  return powerOfTen(-places);
}

/** @returns false where it is no date in either order. */
function setDate(
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

const MONTHS = 'janfebmaraprmayjunjulaugsepoctnovdec';

const CLOCK = String.raw`(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?\s*([ap])?\.?(?:m\.?)?`;
const ZONE = String.raw`\s*(z|utc|gmt|[a-z]{3,4}|[+-]\d\d:?\d\d|[+-]\d\d)?`;
const DATED = new RegExp(`^(\\d{1,4})[-/.](\\d{1,2})[-/.](\\d{1,4})(?:[ t_,-]+${CLOCK}${ZONE})?$`, 'i');
const COMPACT = new RegExp(`^(\\d{4})(\\d\\d)(\\d\\d)[ t_-]+(\\d\\d):?(\\d\\d):?(\\d\\d)?${ZONE}$`, 'i');
const OF_DAY = new RegExp(`^${CLOCK}$`, 'i');
const MONTH_NAMED = new RegExp(
  `^(?:[a-z]{3,9}\\.?,? )?(?:(\\d{1,2})[ -]([a-z]{3})[a-z]*\\.?|([a-z]{3})[a-z]*\\.? (\\d{1,2}))(?:,? |-)(?:(\\d{4}|\\d\\d)[ ,t]+)?${CLOCK}${ZONE}(?: (\\d{4}))?$`,
  'i',
);
const DAYS =
  /^([+-]?\d+)\s*(?:d|days?|tage?|jours?|dias?|\.)[\s,]*(?:(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d+))?)?)?$/i;
const IN_WORDS =
  /^(?:(\d+)\s*(?:d|days?)[\s,]*)?(?:(\d+)\s*(?:h|hrs?|hours?|std)[\s,]*)?(?:(\d+)\s*(?:m|min|mins|minutes?)[\s,]*)?(?:(\d+)(?:[.,](\d+))?\s*(?:s|secs?|seconds?)[\s,]*)?$/i;

function readWordyStamp(text: string, into: Stamp): boolean {
  into.isDated = false;
  into.isTimed = false;
  into.seconds = 0;
  const token = text.trim();
  const dated = DATED.exec(token);
  if (dated !== null) {
    const [, a = '', b = '', c = ''] = dated;
    const isDotted = token.charAt(a.length) === '.';
    if (!setDate(into, Number(a), Number(b), Number(c), a.length === 4, c.length === 4, isDotted))
      return false;
    return dated[4] === undefined || setClock(into, dated.slice(4));
  }
  const compact = COMPACT.exec(token);
  if (compact !== null) {
    if (!setDate(into, Number(compact[1]), Number(compact[2]), Number(compact[3]), true, false, false))
      return false;
    const [h = '', m = '', s, zone] = compact.slice(4);
    return setClock(into, [h, m, s, undefined, undefined, zone]);
  }
  const ofDay = OF_DAY.exec(token);
  if (ofDay !== null) {
    into.written = ofDay[3] === undefined ? 'H:MM' : 'H:MM:SS';
    return setClock(into, ofDay.slice(1));
  }
  const named = MONTH_NAMED.exec(token);
  const month = MONTHS.indexOf((named?.[2] ?? named?.[3] ?? '?').toLowerCase());
  const year = named?.[5] ?? named?.[12];
  // `1 day, 2:03:04` has the same shape, and no month.
  if (named !== null && month >= 0 && month % 3 === 0 && year !== undefined) {
    const fullYear = year.length === 2 ? 2000 + Number(year) : Number(year);
    into.dayMonth = into.monthDay = daysOf(fullYear, 1 + month / 3, Number(named[1] ?? named[4]));
    into.isDated = true;
    into.written = 'd/m/y';
    return !Number.isNaN(into.dayMonth) && setClock(into, named.slice(6, 12));
  }
  return readElapsed(token, into);
}

function readElapsed(token: string, into: Stamp): boolean {
  const days = DAYS.exec(token);
  if (days !== null && (days[2] !== undefined || /[a-z]/i.test(token))) {
    if (days[2] === undefined) {
      into.isTimed = true;
      into.unitS = 86_400;
    } else if (!setClock(into, days.slice(2))) return false;
    into.seconds += 86_400 * Number(days[1]);
    into.written = 'days and time';
    return true;
  }
  const words = IN_WORDS.exec(token);
  if (words === null || !/\d/.test(token)) return false;
  const [, d, h, m, s, fraction] = words;
  const digits = fraction?.length ?? 0;
  into.seconds =
    86_400 * Number(d ?? 0) +
    3600 * Number(h ?? 0) +
    60 * Number(m ?? 0) +
    Number(`${s ?? 0}.${fraction ?? 0}`);
  into.unitS = s === undefined ? (m === undefined ? 3600 : 60) : powerOfTen(-digits);
  into.isTimed = true;
  into.written = 'days and time';
  return true;
}

/** @param parts - hours, minutes, seconds, fraction, a or p, zone. */
function setClock(into: Stamp, parts: readonly (string | undefined)[]): boolean {
  const [h, m, s, fraction, half, zone] = parts;
  let hours = Number(h);
  if (Number(m) > 59 || Number(s ?? 0) > 60) return false;
  if (half !== undefined) {
    if (hours > 12 || hours === 0) return false;
    hours = (hours % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  }
  into.isTimed = true;
  into.seconds = 3600 * hours + 60 * Number(m) + Number(s ?? 0);
  into.unitS = s === undefined ? 60 : 1;
  if (fraction !== undefined) {
    into.seconds += Number(fraction) / powerOfTen(fraction.length);
    into.unitS = fractionUnit(Number(fraction), fraction.length);
  }
  if (zone !== undefined && zone !== '') {
    const offset = /^([+-])(\d\d):?(\d\d)?$/.exec(zone);
    if (offset !== null) {
      const minutes = 60 * Number(offset[2]) + Number(offset[3] ?? 0);
      into.zoneMinutes = offset[1] === '-' ? -minutes : minutes;
    } else if (/^(z|utc|gmt)$/i.test(zone)) into.zoneMinutes = 0;
    if (!Number.isNaN(into.zoneMinutes)) into.seconds -= 60 * into.zoneMinutes;
  }
  return true;
}

const MONTH_DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Days from 1 January 1970 to a date of the Gregorian calendar.
 *
 * @returns NaN where there is no such date.
 * @see H. Hinnant, chrono-compatible low-level date algorithms (from memory).
 */
function daysOf(year: number, month: number, day: number): number {
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= MONTH_DAYS[month - 1]!)) return Number.NaN;
  if (month === 2 && day === 29 && !(year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)))
    return Number.NaN;
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const ofEra = y - era * 400;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

/**
 * A time as ISO 8601.
 *
 * @param seconds - since 1970, of a clock that is so many minutes ahead of UTC; NaN: of an unknown one.
 */
export function isoTime(seconds: number, zoneMinutes: number): string {
  const isZoned = !Number.isNaN(zoneMinutes);
  const shown = seconds + (isZoned ? 60 * zoneMinutes : 0);
  const days = Math.floor(shown / 86_400);
  const thousandths = Math.round((shown - days * 86_400) * 1000);
  const { year, month, day } = dateOf(days);
  const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  const whole = Math.floor(thousandths / 1000);
  const rest = thousandths % 1000;
  const clock = `${two(whole / 3600)}:${two((whole / 60) % 60)}:${two(whole % 60)}`;
  const fraction = rest === 0 ? '' : `.${String(rest).padStart(3, '0')}`;
  const size = Math.abs(zoneMinutes);
  const zone = !isZoned
    ? ''
    : size === 0
      ? 'Z'
      : `${zoneMinutes < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T${clock}${fraction}${zone}`;
}

function dateOf(days: number): { readonly year: number; readonly month: number; readonly day: number } {
  const z = days + 719_468;
  const era = Math.floor(z / 146_097);
  const ofEra = z - era * 146_097;
  const yearOfEra = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  );
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shifted = Math.floor((5 * ofYear + 2) / 153);
  const month = shifted + (shifted < 10 ? 3 : -9);
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: ofYear - Math.floor((153 * shifted + 2) / 5) + 1,
  };
}
