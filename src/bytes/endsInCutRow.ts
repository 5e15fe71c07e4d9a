import { printedResolution } from './printedResolution.ts';
import { splitCells } from './splitCells.ts';
import type { TableShape } from './table.ts';

const TAIL_LENGTH = 4096;

/**
 * Whether the last row was cut off: the text ends without a line end, and that row has fewer cells, a
 * blank last cell, or fewer digits in it than the rows before all have.
 */
export function endsInCutRow(text: string, { dialect, core, bodyFrom }: TableShape): boolean {
  if (/[\r\n]$/.test(text)) return false;
  const tail = text.slice(Math.max(bodyFrom, text.length - TAIL_LENGTH));
  const rows = tail
    .split(/\r\n|\n|\r/)
    .slice(-5)
    .map((line) => splitCells(line, dialect.delimiter));
  const last = rows.pop();
  const column = core.at(-1)!;
  if (last === undefined || rows.length < 2) return false;
  if (rows.every((cells) => (cells[column] ?? '') !== '') && (last[column] ?? '') === '') return true;
  const isLastCell = rows.every((cells) => cells.length === column + 1) && last.length === column + 1;
  const resolutions = new Set(rows.map((cells) => printedResolution(cells[column] ?? '')));
  // Digits are counted without the exponent: rows of a fixed number of digits, and one that has fewer.
  const digits = (cells: readonly string[]): number =>
    /[.,](\d+)/.exec(cells[column] ?? '')?.[1]?.length ?? 0;
  const exponents = new Set(rows.map((cells) => /e/i.test(cells[column] ?? '')));
  const isFixed = new Set(rows.map(digits)).size === 1 && exponents.size === 1 && resolutions.size >= 1;
  return (
    isLastCell &&
    isFixed &&
    (digits(last) < digits(rows[0]!) || (exponents.has(true) && !/e[+-]?\d/i.test(last[column]!)))
  );
}
