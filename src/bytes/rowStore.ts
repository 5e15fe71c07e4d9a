/** Growing columns of numbers: one typed array a column, doubled when full. */
export class RowStore {
  #columns: Float64Array[];
  #rowCount = 0;

  constructor(columnCount: number) {
    this.#columns = Array.from({ length: columnCount }, () => new Float64Array(4096));
  }

  get rowCount(): number {
    return this.#rowCount;
  }

  /** @param values - one value a column, copied. */
  push(values: Float64Array): void {
    if (this.#rowCount === (this.#columns[0]?.length ?? 0)) this.#columns = this.#columns.map(doubled);
    for (let k = 0; k < values.length; k++) this.#columns[k]![this.#rowCount] = values[k]!;
    this.#rowCount++;
  }

  /** The columns, cut to the rows pushed so far. */
  columns(): Float64Array[] {
    return this.#columns.map((column) => column.slice(0, this.#rowCount));
  }
}

function doubled(column: Float64Array): Float64Array {
  const larger = new Float64Array(2 * column.length);
  larger.set(column);
  return larger;
}
