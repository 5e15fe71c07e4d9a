import { parse } from '#csv';

export type DecimalMark = '.' | ',';

/** `blanks`: any run of spaces and tabs. */
export type Delimiter = ',' | ';' | '\t' | '|' | 'blanks';

/** How a table is written. */
export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
}

/**
 * The cells of one line, trimmed. With blanks as delimiter no cell is empty; with any other, two
 * delimiters in a row leave an empty cell between them, as does a trailing one.
 *
 * @param line - one line without its end; quoted cells may hold delimiters.
 */
export function splitCells(line: string, delimiter: Delimiter): string[] {
  const quoted = line.includes('"');
  if (delimiter !== 'blanks') {
    const cells = quoted ? csvCells(line, delimiter) : line.split(delimiter);
    return cells.map((cell) => cell.trim());
  }
  const cells = quoted ? csvCells(line.replaceAll('\t', ' '), ' ') : line.split(/[ \t]+/);
  return cells.filter((cell) => cell !== '');
}

/**
 * The cells of one line with quoted cells, quotes removed.
 *
 * @param line - one line without its end.
 * @param delimiter - one character.
 * @returns the cells; a line whose quotes don't close is split plainly, its quotes taken out.
 */
function csvCells(line: string, delimiter: string): string[] {
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
