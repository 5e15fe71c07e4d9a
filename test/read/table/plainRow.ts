import type { Dialect } from '../../../src/read/text/dialect.ts';

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/;

/**
 * The slow twin of the scan of regular rows: one line split into cells, each wanted one held against a pattern.
 *
 * @param line - without its end.
 * @returns the wanted values; null where the row is not regular.
 */
export function plainRow(
  line: string,
  { delimiter, decimalMark }: Dialect,
  wanted: readonly number[],
): number[] | null {
  if (delimiter === decimalMark || /[^\0-\x7f]/.test(line)) return null;
  const isBlanks = delimiter === 'blanks';
  const cells = isBlanks ? line.replace(/^[ \t]+/, '').split(/[ \t]+/) : line.split(delimiter);
  const last = wanted.at(-1)!;
  // In a cell that nobody wants a quote may hide a delimiter.
  if (cells.slice(0, last).some((cell, column) => !wanted.includes(column) && cell.includes('"')))
    return null;
  const values = wanted.map((column) => numberIn(cells[column] ?? '', decimalMark));
  const rest = cells.slice(last + 1).find((cell) => cell.trim() !== '') ?? '';
  const isNumberBehind =
    '0123456789+-"'.includes(rest.trim()[0] ?? ' ') || rest.trim().startsWith(decimalMark);
  return isNumberBehind || values.some(Number.isNaN) ? null : values;
}

/** NaN for what is no number, or one that says that there is none: SCPI-1999's 9.91E37 (from memory), and all beyond 1e30. */
function numberIn(cell: string, decimalMark: string): number {
  const text = cell.replace(/^[ \t]+|[ \t]+$/g, '');
  if (decimalMark === ',' && text.includes('.')) return Number.NaN;
  const plain = text.replace(decimalMark, '.');
  const value = NUMBER.test(plain) ? Number(plain) : Number.NaN;
  return Math.abs(value) >= 1e30 ? Number.NaN : value;
}
