import { csvCells } from './csvCells.ts';
import type { Delimiter } from './dialect.ts';

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
