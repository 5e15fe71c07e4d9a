import type { Delimiter } from '../../bytes/dialect.ts';
import { splitCells } from '../../bytes/splitCells.ts';
import type { HeadLine } from '../../bytes/table.ts';

/** A first cell that says what its row holds, one more than there are columns. */
const ROW_LABEL = /^(names?|units?|channels?|labels?|signals?|quantity)\s*:?$/i;

/**
 * The cells of a header line, one a file column where that can be had. A header may be written with
 * another delimiter than the rows below it, and names may hold the blanks that part the rows.
 *
 * @param width - file columns of the body.
 */
export function alignedCells(line: HeadLine, width: number, delimiter: Delimiter): readonly string[] {
  // "# t v" over rows parted by blanks: the mark is no name.
  const [first = '', ...rest] = line.cells;
  const marked = /^[#%]+\s*/;
  const bare = first.replace(marked, '');
  const cells = bare !== '' ? [bare, ...rest] : marked.test(first) ? rest : line.cells;
  const text = line.text.trim().replace(/^[#%]+\s*/, '');
  if (cells.length === width + 1 && ROW_LABEL.test(cells[0]!)) return cells.slice(1);
  if (width === 1) return [text.replace(/[,;]$/, '').replace(/^"(.*)"$/, '$1')];
  if (cells.length >= width && (delimiter !== 'blanks' || cells.length === width)) return cells;
  const others = [
    text.split(/\t+|\s{2,}/),
    // Blanks part the names, except before a unit in brackets.
    text.split(/\s+(?![([])/),
    ...([',', ';', '\t'] as const).map((other) => splitCells(text, other)),
  ];
  return others.find((other) => other.length === width) ?? cells;
}
