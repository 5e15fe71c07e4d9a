import { splitCells } from './splitCells.ts';
import type { TableShape } from './table.ts';
import type { TextAccess } from './textAccess.ts';

const TAIL_LENGTH = 4096;
/** Rows looked at before the last: fewer might agree in their digits by chance. */
const ROWS_BEFORE = 30;

/**
 * Whether the last row was cut off: the text ends without a line end, and that row has no last cell, or
 * fewer digits in it than all the rows before.
 */
export function endsInCutRow(text: TextAccess, { dialect, core, bodyFrom }: TableShape): boolean {
  const tail = text.slice(Math.max(bodyFrom, text.length - TAIL_LENGTH), text.length);
  if (/[\r\n]$/.test(tail)) return false;
  const column = core.at(-1)!;
  const lastCells = tail
    .split(/\r\n|\n|\r/)
    .slice(-ROWS_BEFORE - 1)
    .map((line) => splitCells(line, dialect.delimiter)[column] ?? '');
  const last = lastCells.pop() ?? '';
  // The tail may start inside a row.
  const before = lastCells.slice(1);
  if (before.length < 2) return false;
  if (last === '') return before.every((cell) => cell !== '');
  const digits = digitsBehindMark(before[0]!);
  const isFixed = before.every((cell) => digitsBehindMark(cell) === digits);
  return isFixed && digitsBehindMark(last) < digits;
}

/** Characters behind the decimal mark, those of the exponent included. */
function digitsBehindMark(cell: string): number {
  const mark = cell.search(/[.,]/);
  return mark < 0 ? 0 : cell.length - mark - 1;
}
