import { isEven, lineThroughEnds } from './stampLine.ts';
import { stampSteps } from './stampSteps.ts';

/** A step of so many ordinary ones is a stretch without rows. */
const LONG_STEPS = 3.5;
const LEAST_STRETCHES = 3;

/**
 * Whether the file keeps a row only where a value changed, so that no row means "as before".
 *
 * It does where no row repeats the one before, there are stretches without rows, and behind each of them
 * the values have moved no farther than they do in one ordinary step: rows that were lost would leave a
 * wave that went on meanwhile.
 *
 * @param stamps - one a row, never falling.
 * @param columns - the columns of values, one value a row.
 */
export function isKeptOnChange(stamps: Float64Array, columns: readonly Float64Array[]): boolean {
  const line = lineThroughEnds(stamps);
  if (line === null || isEven(stamps, line)) return false;
  for (let row = 1; row < stamps.length; row++) {
    if (columns.every((column) => column[row] === column[row - 1])) return false;
  }
  const longest = LONG_STEPS * stampSteps(stamps).median;
  const isLong = (row: number): boolean => stamps[row]! - stamps[row - 1]! > longest;
  let stretches = 0;
  for (let row = 1; row < stamps.length; row++) if (isLong(row)) stretches++;
  return stretches >= LEAST_STRETCHES && columns.every((column) => movesNoFarther(column, isLong));
}

/** Whether the column changes no more across the long steps than it does across the others. */
function movesNoFarther(column: Float64Array, isLong: (row: number) => boolean): boolean {
  let ordinary = 0;
  let long = 0;
  for (let row = 1; row < column.length; row++) {
    const change = Math.abs(column[row]! - column[row - 1]!);
    if (isLong(row)) long = Math.max(long, change);
    else ordinary = Math.max(ordinary, change);
  }
  // A missing value makes either NaN, and the answer no.
  return long <= ordinary;
}
