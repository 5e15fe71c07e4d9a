import type { Delimiter } from '../../bytes/dialect.ts';
import { splitCells } from '../../bytes/splitCells.ts';
import type { HeadLine } from '../../bytes/table.ts';

/**
 * A line of settings with its cells as its own writer parted them: where blanks part the rows of numbers,
 * they are inside the keys above them.
 */
export function settingCells(line: HeadLine, delimiter: Delimiter): HeadLine {
  if (delimiter !== 'blanks') return line;
  const other = ([',', ';'] as const).find((candidate) => line.text.includes(candidate));
  const cells = other === undefined ? line.text.trim().split(/\t+|\s{2,}/) : splitCells(line.text, other);
  return { ...line, cells };
}
