import { beyondRange, isMissingMark, parseNumber } from '../text/parseNumber.ts';
import type { TableShape } from './table.ts';

/** What a table tells about each of its rows. */
export type RowShape = Pick<TableShape, 'dialect' | 'columns' | 'core' | 'looseFrom' | 'closedWidth'>;

/** Of all that is known of a table: what a thread that reads its rows needs. */
export function rowShape({ dialect, columns, core, looseFrom, closedWidth }: TableShape): RowShape {
  return { dialect, columns, core, looseFrom, closedWidth };
}

/**
 * Reads one row from its cells.
 *
 * @param values - filled with one value for each of the table's columns, NaN where the cell is missing, infinite
 * where it says that the value is beyond the instrument's range.
 * @returns false where the line is no row: a core column holds neither number, blank nor missing mark, or the line
 * is wider or narrower than a row can be, so that a number may stand in another's column.
 */
export function readCells(cells: readonly string[], shape: RowShape, values: Float64Array): boolean {
  const { columns, core, dialect } = shape;
  if (isTooWide(cells, shape) || isTooNarrow(cells, shape)) return false;
  return columns.every((column, k) => {
    const cell = cells[column];
    const value = cell === undefined ? null : parseNumber(cell, dialect.decimalMark);
    values[k] = value ?? (cell === undefined ? Number.NaN : beyondRange(cell));
    return value !== null || !core.includes(column) || (cell !== undefined && isMissingMark(cell));
  });
}

/** A number behind the last column: settings and remarks begin with a word. */
function isTooWide(cells: readonly string[], { looseFrom, dialect }: RowShape): boolean {
  for (let column = looseFrom; column < cells.length; column++) {
    if (cells[column] !== '') return parseNumber(cells[column]!, dialect.decimalMark) !== null;
  }
  return false;
}

/** Ended by a delimiter like the others, and yet with fewer cells: one of them is lost, not just empty. */
function isTooNarrow(cells: readonly string[], { closedWidth }: RowShape): boolean {
  return cells.length < closedWidth && cells.at(-1) === '';
}
