import type { Dialect } from '../../bytes/dialect.ts';
import { parseNumber } from '../../bytes/parseNumber.ts';
import type { HeadLine } from '../../bytes/table.ts';
import { alignedCells } from './alignedCells.ts';
import { nameAndUnit } from './nameAndUnit.ts';
import { nameSays } from './nameSays.ts';
import { unitOf } from './unitOf.ts';

/** The head lines that name the columns. Cells are by file column. */
export interface HeaderRows {
  readonly names: HeadLine | null;
  readonly units: HeadLine | null;
}

/**
 * Finds the row of names and the row of units just above the body; either may be absent.
 *
 * @param head - the lines above the body, in order.
 * @param columns - 0-based file columns of the body.
 */
export function headerRows(
  head: readonly HeadLine[],
  columns: readonly number[],
  dialect: Dialect,
): HeaderRows {
  const width = columns.at(-1)! + 1;
  const aligned = head
    .slice(-4)
    .map((line) => ({ ...line, cells: alignedCells(line, width, dialect.delimiter) }));
  const last = aligned.at(-1) ?? null;
  const above = aligned.at(-2) ?? null;
  const over = (line: HeadLine): string[] => columns.map((column) => line.cells[column] ?? '');
  const fits = (cells: readonly string[]): boolean =>
    cells.filter((cell) => cell !== '').length >= Math.max(1, columns.length - 1);
  const isUnits = (line: HeadLine): boolean =>
    fits(over(line)) && over(line).every((cell) => cell === '' || unitOf(cell) !== null);
  const isNumber = (cell: string): boolean => parseNumber(cell, dialect.decimalMark) !== null;
  const isNames = (line: HeadLine): boolean => {
    const cells = over(line);
    const [first = '', ...rest] = cells;
    if (!fits(cells) || isNumber(first)) return false;
    // "Points,1000" is a setting; "x-axis,1" names a channel 1.
    return isAxisName(first) || !rest.some(isNumber);
  };

  if (last === null) return { names: null, units: null };
  if (isUnits(last)) return { names: above !== null && fits(over(above)) ? above : null, units: last };
  if (!isNames(last)) return { names: null, units: null };
  return { names: last, units: above !== null && isUnits(above) ? above : null };
}

function isAxisName(cell: string): boolean {
  const { name, unit } = nameAndUnit(cell);
  const says = nameSays(name);
  return unit?.dimension === 'time' || says === 'time' || says === 'index';
}
