import { type ColumnTrend, countsUp } from '../columns/columnTrend.ts';

/** Time as a straight line over rows: stamp ≈ start + row · interval. */
export interface StampLine {
  readonly start: number;
  readonly interval: number;
}

/** The line through the first and the last stamp present; null with fewer than two. */
export function lineThroughEnds(stamps: Float64Array): StampLine | null {
  let first = 0;
  while (first < stamps.length && Number.isNaN(stamps[first]!)) first++;
  let last = stamps.length - 1;
  while (last > first && Number.isNaN(stamps[last]!)) last--;
  if (last <= first) return null;
  const interval = (stamps[last]! - stamps[first]!) / (last - first);
  return { start: stamps[first]! - first * interval, interval };
}

/** The least-squares line over the stamps present: finer than the ends where stamps are coarse. */
export function leastSquaresLine(stamps: Float64Array): StampLine {
  let count = 0;
  let rowSum = 0;
  let stampSum = 0;
  for (let i = 0; i < stamps.length; i++) {
    if (Number.isNaN(stamps[i]!)) continue;
    count++;
    rowSum += i;
    stampSum += stamps[i]!;
  }
  const meanRow = rowSum / count;
  const meanStamp = stampSum / count;
  let covariance = 0;
  let variance = 0;
  for (let i = 0; i < stamps.length; i++) {
    if (Number.isNaN(stamps[i]!)) continue;
    covariance += (i - meanRow) * (stamps[i]! - meanStamp);
    variance += (i - meanRow) ** 2;
  }
  const interval = covariance / variance;
  return { start: meanStamp - meanRow * interval, interval };
}

/** Of the interval: what stamps may stray from the straight line and still be even (jitter, rounding). */
const EVEN_WITHIN = 0.1;

/** Whether stamps lie on a line, but for jitter and rounding that are small beside its interval. */
export function isEven(stamps: Float64Array, line: StampLine): boolean {
  return largestDeviation(stamps, line) <= EVEN_WITHIN * line.interval;
}

/** The largest distance of a stamp from a line, in the stamps' unit. */
export function largestDeviation(stamps: Float64Array, line: StampLine): number {
  let largest = 0;
  for (let i = 0; i < stamps.length; i++) {
    const deviation = Math.abs(stamps[i]! - line.start - i * line.interval);
    if (deviation > largest) largest = deviation;
  }
  return largest;
}

/** What is kept of the stamps of a run of rows: enough to tell later whether all runs lie on one line. */
export interface StampRun {
  readonly rowCount: number;
  /** How many rows have a stamp; with none, the numbers below say nothing. */
  readonly presentCount: number;
  /** Rows within the run, and their stamps. */
  readonly firstRow: number;
  readonly first: number;
  readonly lastRow: number;
  readonly last: number;
  /** The largest distance of a stamp from the line through the first and the last. */
  readonly strays: number;
  readonly countsUp: boolean;
}

/** @param stamps - one a row, NaN where missing. */
export function stampRun(stamps: Float64Array): StampRun {
  const isPresent = (stamp: number): boolean => !Number.isNaN(stamp);
  const firstRow = stamps.findIndex(isPresent);
  const lastRow = stamps.findLastIndex(isPresent);
  const first = stamps[firstRow] ?? Number.NaN;
  const last = stamps[lastRow] ?? Number.NaN;
  const interval = lastRow > firstRow ? (last - first) / (lastRow - firstRow) : 0;
  return {
    rowCount: stamps.length,
    presentCount: countPresent(stamps),
    firstRow,
    first,
    lastRow,
    last,
    strays: largestDeviation(stamps, { start: first - firstRow * interval, interval }),
    countsUp: countsUp(stamps),
  };
}

function countPresent(stamps: Float64Array): number {
  let count = 0;
  for (let row = 0; row < stamps.length; row++) if (!Number.isNaN(stamps[row]!)) count++;
  return count;
}

/** A column of stamps of which only its line is known, and that it keeps to it. */
interface EvenStamps extends ColumnTrend {
  readonly line: StampLine;
}

/** Of the interval. `isEven` allows 0.1: what lies between is for the rounding of either sum. */
const SURELY_EVEN_WITHIN = 0.09;
const ROUNDING_WITHIN = 0.01;
/** With more rows lacking a stamp, whether those left rise evenly is not sure. */
const MOST_MISSING_SHARE = 0.04;

/**
 * Whether stamps that were read run by run are surely even, in the sense of `isEven`, about the line through the
 * first and the last.
 *
 * Within a run a stamp lies off the common line by at most its distance from the run's own chord plus that of
 * the chord, which is largest at one of its ends.
 *
 * @param runs - in order, of all rows.
 * @returns null where they aren't, or may not be.
 */
export function evenStamps(runs: readonly StampRun[]): EvenStamps | null {
  let rowCount = 0;
  const placed: (StampRun & { readonly from: number })[] = [];
  let presentCount = 0;
  for (const run of runs) {
    if (run.presentCount > 0) placed.push({ ...run, from: rowCount });
    rowCount += run.rowCount;
    presentCount += run.presentCount;
  }
  const [head, tail] = [placed[0], placed.at(-1)];
  if (head === undefined || tail === undefined) return null;
  const firstRow = head.from + head.firstRow;
  const lastRow = tail.from + tail.lastRow;
  const interval = (tail.last - head.first) / (lastRow - firstRow);
  if (!(interval > 0) || rowCount - presentCount > MOST_MISSING_SHARE * rowCount) return null;
  const start = head.first - firstRow * interval;
  const rounding = 8 * Number.EPSILON * Math.max(Math.abs(head.first), Math.abs(tail.last));
  if (rounding > ROUNDING_WITHIN * interval) return null;

  const offLine = (row: number, stamp: number): number => Math.abs(stamp - start - row * interval);
  const isNear = placed.every(
    ({ from, firstRow, first, lastRow, last, strays }) =>
      Math.max(offLine(from + firstRow, first), offLine(from + lastRow, last)) + strays <=
      SURELY_EVEN_WITHIN * interval,
  );
  if (!isNear) return null;
  const goesOn = placed.every(({ first }, i) => {
    const before = placed[i - 1]?.last;
    return before === undefined || first === before + 1 || first <= 1;
  });
  const isCount = goesOn && placed.every((run) => run.countsUp);
  return {
    line: { start, interval },
    countsUp: () => isCount,
    risesEvenly: () => true,
    isCounter: () => false,
  };
}
