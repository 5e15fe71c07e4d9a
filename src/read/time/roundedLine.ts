import { decimalExponent, powerOfTen } from '../../base/elementary.ts';
import type { ColumnDigits } from '../text/columnDigits.ts';
import type { StampLine } from './stampLine.ts';

/** An even time that explains stamps which were printed with few digits. */
interface RoundedLine {
  readonly line: StampLine;
  /** The value of the last digit of the coarsest stamp. */
  readonly coarsest: number;
  /**
   * What the interval may be off by, each way, over itself: every even time between these has the same stamps. Null
   * where stamps stray by more than their digits, so that this can't be told.
   */
  readonly intervalWithin: number | null;
}

/** Of its last digit: what a stamp may lie off the line. Rounding takes half; the fitted line adds a little. */
const WITHIN = 0.6;

/**
 * The even time behind stamps that were rounded, or cut, to the digits they print. With three significant digits the
 * last one is worth ten times as much from each power of ten on, so each stamp is held to its own.
 *
 * The line is laid through the places where the stamps go on: half-way between what the stamp before and the one
 * behind leave open. That is known to half an interval however coarse the stamps are, while the stamps themselves
 * would each pull by half a digit. Of all lines that have the same stamps it is then the middle one that is taken.
 *
 * @param stamps - never falling, NaN where missing.
 * @param tick - below which no stamp can tell (single precision), same unit; 0 where there is none.
 * @returns null where no even time explains every stamp.
 */
export function roundedLine(stamps: Float64Array, digits: ColumnDigits, tick: number): RoundedLine | null {
  const lastDigits = lastDigitsOf(stamps, digits, tick);
  return explained(stamps, lastDigits, 'rounded') ?? explained(stamps, lastDigits, 'cut');
}

/** The value of the last digit of each stamp. */
function lastDigitsOf(
  stamps: Float64Array,
  { significant, finest }: ColumnDigits,
  tick: number,
): Float64Array {
  const least = Math.max(finest, tick);
  let [decade, beyond, digit] = [0, 0, least];
  return stamps.map((stamp) => {
    const size = Math.abs(stamp);
    if (Number.isNaN(size) || size === 0) return least;
    if (size < decade || size >= beyond) {
      const exponent = decimalExponent(size);
      decade = powerOfTen(exponent);
      beyond = powerOfTen(exponent + 1);
      digit = Number.isFinite(significant) ? Math.max(least, powerOfTen(exponent - significant + 1)) : least;
    }
    return digit;
  });
}

function explained(
  stamps: Float64Array,
  lastDigits: Float64Array,
  kind: 'rounded' | 'cut',
): RoundedLine | null {
  // A stamp cut towards zero stands for times from itself on; where it is zero, for those on both sides.
  const middle = (row: number): number =>
    kind === 'rounded' ? stamps[row]! : stamps[row]! + (Math.sign(stamps[row]!) * lastDigits[row]!) / 2;
  const half = (row: number): number =>
    kind === 'cut' && stamps[row] === 0 ? lastDigits[row]! : lastDigits[row]! / 2;
  const line = lineThroughRises(stamps, middle, half);
  if (line === null) return null;
  let coarsest = 0;
  for (let row = 0; row < stamps.length; row++) {
    if (Number.isNaN(stamps[row]!)) continue;
    const off = Math.abs(middle(row) - line.start - row * line.interval);
    // The bound is NaN for no stamp.
    if (off > 2 * WITHIN * half(row)) return null;
    if (lastDigits[row]! > coarsest) coarsest = lastDigits[row]!;
  }
  const fitting = linesThatFit(stamps, middle, half, line.interval);
  return fitting === null ? { line, coarsest, intervalWithin: null } : { ...fitting, coarsest };
}

/**
 * The middle one of all lines that have the same stamps, and how far the interval may go each way before a stamp would
 * have been printed otherwise. A slope fits where some start does: where the lowest of the upper ends less slope·row is
 * not under the highest of the lower ends. That difference is concave in the slope, so that Newton's steps from outside
 * come to its two roots.
 *
 * @param interval - about that of the line.
 */
function linesThatFit(
  stamps: Float64Array,
  middle: (row: number) => number,
  half: (row: number) => number,
  interval: number,
): Pick<RoundedLine, 'line' | 'intervalWithin'> | null {
  const rows = turningRows(stamps);
  const roomAt = (slope: number): Room => {
    let [upper, lower] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    let [atUpper, atLower] = [0, 0];
    for (const row of rows) {
      const off = middle(row) - slope * row;
      if (off + half(row) < upper) [upper, atUpper] = [off + half(row), row];
      if (off - half(row) > lower) [lower, atLower] = [off - half(row), row];
    }
    return { left: upper - lower, change: atLower - atUpper, start: (upper + lower) / 2 };
  };
  const rootFrom = (outside: number, way: 1 | -1): number | null => {
    let slope = outside;
    for (let step = 0; step < MOST_STEPS; step++) {
      const { left, change } = roomAt(slope);
      // The last step may end a rounding error short.
      if (left >= -1e-6 * interval) return slope;
      // Past the top of the curve without having come above zero.
      if (way * change <= 0) return null;
      slope -= left / change;
    }
    return null;
  };
  const least = rootFrom(0, 1);
  const most = rootFrom(2 * interval, -1);
  if (least === null || most === null) return null;
  const middling = (least + most) / 2;
  return {
    line: { start: roomAt(middling).start, interval: middling },
    intervalWithin: Math.max(0, most - least) / 2 / middling,
  };
}

/** What a slope leaves to the start of a line. */
interface Room {
  /** Below zero where no start fits. */
  readonly left: number;
  /** Of `left`, with the slope. */
  readonly change: number;
  /** The middle of the starts that fit. */
  readonly start: number;
}

/** Newton's steps come to a root in a handful, each at another pair of stamps. */
const MOST_STEPS = 50;

/** The rows before and behind each rise: between them no stamp says more. */
function turningRows(stamps: Float64Array): readonly number[] {
  const rows: number[] = [];
  let before = -1;
  for (let row = 0; row < stamps.length; row++) {
    if (Number.isNaN(stamps[row]!)) continue;
    if (before >= 0 && stamps[row]! > stamps[before]!) {
      if (rows.at(-1) !== before) rows.push(before);
      rows.push(row);
    }
    before = row;
  }
  return rows;
}

/** The weighted least-squares line through the places where the stamps rise; null with fewer than two. */
function lineThroughRises(
  stamps: Float64Array,
  middle: (row: number) => number,
  half: (row: number) => number,
): StampLine | null {
  const roughInterval = (stamps.at(-1)! - stamps[0]!) / (stamps.length - 1);
  const rises: { readonly row: number; readonly stamp: number; readonly weight: number }[] = [];
  let before = -1;
  for (let row = 0; row < stamps.length; row++) {
    if (Number.isNaN(stamps[row]!)) continue;
    if (before >= 0 && stamps[row]! > stamps[before]!) {
      const stamp = (middle(before) + half(before) + middle(row) - half(row)) / 2;
      // Known to the stamps' own digits, or to the rows' distance where that is finer.
      const doubt = Math.min(half(before) + half(row), roughInterval) || Number.MIN_VALUE;
      rises.push({ row: (before + row) / 2, stamp, weight: 1 / doubt ** 2 });
    }
    before = row;
  }
  if (rises.length < 2) return null;
  let [weights, rowSum, stampSum] = [0, 0, 0];
  for (const { row, stamp, weight } of rises) {
    weights += weight;
    rowSum += weight * row;
    stampSum += weight * stamp;
  }
  const [meanRow, meanStamp] = [rowSum / weights, stampSum / weights];
  let [covariance, variance] = [0, 0];
  for (const { row, stamp, weight } of rises) {
    covariance += weight * (row - meanRow) * (stamp - meanStamp);
    variance += weight * (row - meanRow) ** 2;
  }
  const interval = covariance / variance;
  return interval > 0 ? { start: meanStamp - meanRow * interval, interval } : null;
}
