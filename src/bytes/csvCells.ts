import { parse } from '#csv';

/**
 * The cells of one line with quoted cells, quotes removed.
 *
 * @param line - one line without its end.
 * @param delimiter - one character.
 * @returns the cells; a line whose quotes don't close is split plainly, its quotes taken out.
 */
export function csvCells(line: string, delimiter: string): string[] {
  try {
    const rows: string[][] = parse(line, {
      delimiter,
      relax_quotes: true,
      relax_column_count: true,
      trim: delimiter !== '\t',
    });
    return rows[0] ?? [];
  } catch (error) {
    // Its error class differs between the builds; its codes don't.
    if (!String((error as { code?: unknown }).code).startsWith('CSV_')) throw error;
    return line.split(delimiter).map((cell) => cell.replaceAll('"', ''));
  }
}
