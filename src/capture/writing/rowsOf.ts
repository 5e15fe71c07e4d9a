/**
 * Columns of cells as the lines of a file.
 *
 * @param columns - all of one length.
 */
export function rowsOf(columns: readonly (readonly string[])[], delimiter: string): string[] {
  return (columns[0] ?? []).map((_, row) => columns.map((column) => column[row]).join(delimiter));
}
