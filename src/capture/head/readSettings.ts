import type { HeadLine } from '../../bytes/table.ts';
import type { Setting } from './setting.ts';
import { unitOf } from './unitOf.ts';

/** `Key: 1`, `Key = 1`; `Key 1 s`. */
const KEY_AND_VALUE = /^([^:=]*[A-Za-z)\]µ#])\s*[:=]\s*(\S.*)$/;
const WORDS_AND_NUMBER = /^(.*[A-Za-z)\]])\s+([+-]?\.?\d.*)$/;

/**
 * The settings that one head line holds. A key stands in a cell of its own with its values behind it, or
 * in one cell with its value: `Key,1`, `Key:,1`, `Key: 1`, `Key = 1`, `Key 1 s`. A line may be pairs of
 * key and value one behind the other. An empty cell starts the next setting, since two exports may stand
 * side by side.
 */
export function readSettings(line: HeadLine): Setting[] {
  return cellGroups(line).flatMap(({ cells, column }) => {
    const [first = '', ...rest] = cells;
    const read = (key: string, values: string[]): Setting => setting(key, values, line.line, column);
    const byChannel = rest.length === 1 ? channelValues(rest[0]!) : null;
    if (byChannel !== null) return [read(first, byChannel.values), read('channel', byChannel.names)];
    const within = KEY_AND_VALUE.exec(first) ?? (rest.length === 0 ? WORDS_AND_NUMBER.exec(first) : null);
    if (within !== null) return [read(within[1]!, [within[2]!, ...rest])];
    if (rest.length === 0) return [];
    // Whether a later cell is a key or a value shows only when its key is known: both readings stand.
    const pairs =
      rest.length < 3
        ? []
        : rest.slice(1).flatMap((key, i) => (i % 2 === 0 ? [read(key, rest.slice(i + 2, i + 3))] : []));
    return [
      read(first, rest),
      ...pairs.filter(({ key, values }) => /[a-z]{2}/.test(key) && values.length > 0),
    ];
  });
}

/** `CH1:2.0 CH2:5.0` in one cell: channels and their values, or null. */
function channelValues(cell: string): { names: string[]; values: string[] } | null {
  const pairs = cell.split(/\s+/).map((pair) => /^((?:ch|channel)?\d+|[A-D]):(\S+)$/i.exec(pair));
  if (!pairs.every((pair) => pair !== null)) return null;
  return { names: pairs.map((pair) => pair[1]!), values: pairs.map((pair) => pair[2]!) };
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
  const bracket = /^(.*?)\s*[([]([^()[\]]*)[)\]]\s*[:=]?\s*$/.exec(keyText) ?? unitInWords(keyText);
  const key = (bracket?.[1] ?? keyText)
    // SampleRate, HUnit
    .replace(/([a-z])(?=[A-Z])|([A-Z])(?=[A-Z][a-z])/g, '$1$2 ')
    .toLowerCase()
    .replace(/^[#%/;\s]+/, '')
    .replace(/[\s_:=.-]+/g, ' ')
    .trim();
  return { key, keyUnit: bracket?.[2] ?? null, values, line, column };
}

/** `Sample interval in µs`. */
function unitInWords(keyText: string): RegExpExecArray | null {
  const match = /^(.*\S)\s+in\s+(\S+?)\s*[:=]?$/i.exec(keyText.trim());
  return match !== null && unitOf(match[2]!) !== null ? match : null;
}
