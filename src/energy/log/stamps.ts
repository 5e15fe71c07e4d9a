import { powerOfTen } from '../../base/elementary.ts';
import { fractionUnit, type Stamp, setDate } from './stamp.ts';
import { readWordyStamp } from './wordyStamp.ts';

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
