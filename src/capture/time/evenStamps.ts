import type { ColumnTrend } from '../columns/columnTrend.ts';
import type { StampLine } from './stampLine.ts';
import type { StampRun } from './stampRun.ts';

/** A column of stamps of which only its line is known, and that it keeps to it. */
export interface EvenStamps extends ColumnTrend {
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
