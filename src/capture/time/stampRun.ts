import { countsUp } from '../columns/countsUp.ts';
import { largestDeviation } from './stampLine.ts';

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
