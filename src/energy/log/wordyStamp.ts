import { powerOfTen } from '../../base/elementary.ts';
import { daysOf } from './calendar.ts';
import { fractionUnit, type Stamp, setDate } from './stamp.ts';

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

/** A stamp with a month's name, a half of the day, a zone or units in words: by patterns. @param into - filled. */
export function readWordyStamp(text: string, into: Stamp): boolean {
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
