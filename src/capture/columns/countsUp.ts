/**
 * Whether a column numbers its rows: whole numbers, one more from each row to the next, missing ones aside.
 *
 * @param values - shape N, NaN where missing.
 */
export function countsUp(values: Float64Array): boolean {
  let previous = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (!Number.isFinite(value)) continue;
    if (!Number.isInteger(value)) return false;
    // A restart is a new segment, not the end of counting.
    if (!Number.isNaN(previous) && value !== previous + 1 && value > 1) return false;
    previous = value;
  }
  return !Number.isNaN(previous);
}
