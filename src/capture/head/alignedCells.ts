import type { Delimiter } from '../../bytes/dialect.ts';
import { splitCells } from '../../bytes/splitCells.ts';
import type { HeadLine } from '../../bytes/table.ts';

/**
 * The cells of a header line, one a file column where that can be had. A header may be written with
 * another delimiter than the rows below it, and names may hold the blanks that part the rows.
 *
 * @param width - file columns of the body.
 */
export function alignedCells(line: HeadLine, width: number, delimiter: Delimiter): readonly string[] {
  const isAligned = (cells: readonly string[]): boolean =>
    cells.length >= width && (delimiter !== 'blanks' || cells.length === width);
  if (width === 1)
    return [
      line.text
        .trim()
        .replace(/[,;]$/, '')
        .replace(/^"(.*)"$/, '$1'),
    ];
  if (isAligned(line.cells)) return line.cells;
  const text = line.text.trim();
  const others = [
    text.split(/\t+|\s{2,}/),
    text
      .replace(/\s+(?=[([])/g, '\u0000')
      .split(/\s+/)
      .map((cell) => cell.replace('\u0000', ' ')),
    ...([',', ';', '\t'] as const).map((other) => splitCells(text, other)),
  ];
  return others.find((cells) => cells.length === width) ?? line.cells;
}
