import { countsUp } from '../columns/countsUp.ts';
import { largestDeviation, lineThroughEnds } from './stampLine.ts';

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
  const rowCount = stamps.length;
  let presentCount = 0;
  let firstRow = -1;
  let lastRow = -1;
  for (let row = 0; row < rowCount; row++) {
    if (Number.isNaN(stamps[row]!)) continue;
    if (firstRow < 0) firstRow = row;
    lastRow = row;
    presentCount++;
  }
  const line = lineThroughEnds(stamps);
  return {
    rowCount,
    presentCount,
    firstRow,
    first: stamps[firstRow] ?? Number.NaN,
    lastRow,
    last: stamps[lastRow] ?? Number.NaN,
    strays: line === null ? 0 : largestDeviation(stamps, line),
    countsUp: countsUp(stamps),
  };
}
