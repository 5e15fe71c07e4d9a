import { isMissingMark } from './isMissingMark.ts';
import { parseNumber } from './parseNumber.ts';
import type { TableShape } from './table.ts';

/**
 * Reads one row from its cells.
 *
 * @param values - filled with one value for each of the table's columns, NaN where the cell is missing.
 * @returns false where the line is no row: a core column holds neither number, blank nor missing mark.
 */
export function readCells(
  cells: readonly string[],
  { columns, core, dialect }: Pick<TableShape, 'columns' | 'core' | 'dialect'>,
  values: Float64Array,
): boolean {
  return columns.every((column, k) => {
    const cell = cells[column];
    const value = cell === undefined ? null : parseNumber(cell, dialect.decimalMark);
    values[k] = value ?? Number.NaN;
    return value !== null || !core.includes(column) || (cell !== undefined && isMissingMark(cell));
  });
}
