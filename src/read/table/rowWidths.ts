import { type Dialect, splitCells } from '../text/dialect.ts';
import { parseNumber } from '../text/parseNumber.ts';
import type { TextAccess } from '../text/textAccess.ts';
import type { HeadLine, TableShape } from './table.ts';

/** What tells how the last row of a table should end. */
type CutTable = Pick<TableShape, 'core' | 'bodyFrom'> & { readonly dialect: Pick<Dialect, 'delimiter'> };

/** Of the rows: end alike, and the others are damaged or were cut short. */
const NEARLY_ALL = 0.9;
/** Rows wider than the columns by a number, at least, to be the longer of two tables and not damage. */
const LEAST_WIDE_ROWS = 8;
/** Of such rows to a run: damage is scattered, another table is not. */
const ROWS_A_RUN = 8;

/**
 * How wide a row may be, learnt from rows spread over the file and from the header above them.
 *
 * @param rows - cells of sampled rows, in order.
 * @param columns - those of numbers.
 */
export function rowWidths(
  rows: readonly (readonly string[])[],
  head: readonly HeadLine[],
  columns: readonly number[],
  { delimiter, decimalMark }: Dialect,
): Pick<TableShape, 'looseFrom' | 'closedWidth'> {
  const behindColumns = columns.at(-1)! + 1;
  // Where blanks part the cells, a header's words are no columns.
  const named = delimiter === 'blanks' ? [] : head.slice(-1).map(({ cells }) => filledWidth(cells));
  const widths = rows.map((cells) => widthByNumbers(cells, behindColumns, decimalMark));
  return {
    looseFrom: [behindColumns, ...named, ...systematic(widths, behindColumns)].reduce((a, b) =>
      Math.max(a, b),
    ),
    closedWidth: delimiter === 'blanks' ? 0 : closedWidth(rows),
  };
}

/** Up to the last cell that isn't empty. */
function filledWidth(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell !== '') + 1;
}

/** The filled width where a number stands right behind the columns, else theirs. */
function widthByNumbers(
  cells: readonly string[],
  behindColumns: number,
  mark: Dialect['decimalMark'],
): number {
  const next = cells.findIndex((cell, column) => column >= behindColumns && cell !== '');
  return next >= 0 && parseNumber(cells[next]!, mark) !== null ? filledWidth(cells) : behindColumns;
}

/** Widths beyond the columns that rows have in long runs, as where a second table stands beside a longer first. */
function systematic(widths: readonly number[], behindColumns: number): number[] {
  const found = new Map<number, { rows: number; runs: number }>();
  widths.forEach((width, i) => {
    if (width === behindColumns) return;
    const { rows, runs } = found.get(width) ?? { rows: 0, runs: 0 };
    found.set(width, { rows: rows + 1, runs: runs + (widths[i - 1] === width ? 0 : 1) });
  });
  return [...found]
    .filter(([, { rows, runs }]) => rows >= LEAST_WIDE_ROWS && rows >= ROWS_A_RUN * runs)
    .map(([width]) => width);
}

function closedWidth(rows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const cells of rows) {
    if (cells.at(-1) === '') counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  }
  const [width, count] = [...counts].reduce((most, next) => (next[1] > most[1] ? next : most), [0, 0]);
  return count > NEARLY_ALL * rows.length ? width : 0;
}

const TAIL_LENGTH = 4096;
/** Rows looked at before the last: fewer might agree in their digits by chance. */
const ROWS_BEFORE = 30;

/**
 * Whether the last row was cut off: the text ends without a line end, and that row has no last cell, or
 * fewer digits in it than all the rows before.
 */
export function endsInCutRow(text: TextAccess, { dialect, core, bodyFrom }: CutTable): boolean {
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
