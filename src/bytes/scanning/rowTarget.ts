/** Columns that rows are read into, and how many rows stand there. */
export interface RowTarget {
  /** One array a wanted column, all of one length. */
  readonly columns: Float64Array[];
  rowCount: number;
}

/** A row is one character and a line end, at least. */
const LEAST_ROW = 2;

/** Rows that so many bytes may hold, and one that starts at their end. */
export function roomFor(byteCount: number): number {
  return Math.ceil(byteCount / LEAST_ROW) + 1;
}

/** Makes room for the rows of so many bytes more. */
export function makeRoom({ columns, rowCount }: RowTarget, byteCount: number): void {
  const needed = rowCount + roomFor(byteCount);
  if (columns.every((column) => column.length >= needed)) return;
  for (const [k, column] of columns.entries()) {
    const longer = new Float64Array(Math.max(needed, 2 * column.length));
    longer.set(column.subarray(0, rowCount));
    columns[k] = longer;
  }
}
