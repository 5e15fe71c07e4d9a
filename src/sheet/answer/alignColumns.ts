/**
 * Rows of cells as lines in columns, two blanks apart.
 *
 * @param rows - of any lengths; a short row leaves its last columns empty.
 * @param side - where cells stand in their column; `right` is for numbers.
 */
export function alignColumns(
  rows: readonly (readonly string[])[],
  side: 'left' | 'right' = 'left',
): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, [...cell].length);
    });
  }
  const padded = (cell: string, i: number): string => {
    const blanks = ' '.repeat((widths[i] ?? 0) - [...cell].length);
    return side === 'left' ? cell + blanks : blanks + cell;
  };
  return rows.map((row) => row.map(padded).join('  ').trimEnd());
}
