import type { HeadLine } from '../../bytes/table.ts';
import type { Setting } from './setting.ts';

/**
 * The settings that one head line holds. A key stands in a cell of its own with its values behind it, or
 * in one cell with its value: `Key,1`, `Key:,1`, `Key: 1`, `Key = 1`, `Key 1 s`. An empty cell starts the
 * next setting, since two exports may stand side by side.
 */
export function readSettings(line: HeadLine): Setting[] {
  return cellGroups(line).flatMap(({ cells, column }) => {
    const [first = '', ...rest] = cells;
    const within =
      /^([^:=]*[A-Za-z)\]µ#])\s*[:=]\s*(\S.*)$/.exec(first) ??
      /^(.*[A-Za-z)\]])\s+([+-]?\.?\d.*)$/.exec(first);
    if (rest.length === 0 && within !== null) return [setting(within[1]!, [within[2]!], line.line, column)];
    // "Sample rate: 1 MSa/s" in a line with further cells: a value of its own and more values behind.
    if (within !== null && /[:=]/.test(first))
      return [setting(within[1]!, [within[2]!, ...rest], line.line, column)];
    return rest.length === 0 ? [] : [setting(first, rest, line.line, column)];
  });
}

/** Runs of cells that aren't empty; a lone word and the numbers after one empty cell belong together. */
function cellGroups(line: HeadLine): { cells: string[]; column: number }[] {
  const groups: { cells: string[]; column: number }[] = [];
  let wasEmpty = true;
  line.cells.forEach((cell, column) => {
    if (cell === '') {
      wasEmpty = true;
      return;
    }
    const open = groups.at(-1);
    const isValueOfWord = open?.cells.length === 1 && /^[+-]?\.?\d/.test(cell) && column === open.column + 2;
    if (open !== undefined && (!wasEmpty || isValueOfWord)) open.cells.push(cell);
    else groups.push({ cells: [cell], column });
    wasEmpty = false;
  });
  return groups;
}

function setting(keyText: string, values: string[], line: number, column: number): Setting {
  const bracket = /^(.*?)\s*[([]([^()[\]]*)[)\]]\s*[:=]?\s*$/.exec(keyText);
  const key = (bracket?.[1] ?? keyText)
    .toLowerCase()
    .replace(/^[#%/;\s]+/, '')
    .replace(/[\s_:=.-]+/g, ' ')
    .trim();
  return { key, keyUnit: bracket?.[2] ?? null, values, line, column };
}
