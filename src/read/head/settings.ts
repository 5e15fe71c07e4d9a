import type { Acquisition } from '../capture.ts';
import type { HeadLine } from '../table/table.ts';
import { parseNumber } from '../text/parseNumber.ts';
import { type Unit, unitOf } from './unitOf.ts';

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

/** Something that a capture's head says about itself: `Sample Interval,4e-6,s`, `Coupling: DC`. */
export interface Setting {
  /** Lower case, without punctuation, blanks single: `sample interval`. */
  readonly key: string;
  /** The text in brackets behind the key, where there is one: a unit, mostly. */
  readonly keyUnit: string | null;
  /** Cells behind the key, not empty; several where the setting differs between channels. */
  readonly values: readonly string[];
  /** 1-based line of the file, 0-based column of the key. */
  readonly line: number;
  readonly column: number;
}

interface SettingValue {
  readonly value: number;
  /** From the value's own cell, the cell behind it, or the brackets of the key; null where none stands. */
  readonly unit: Unit | null;
}

/**
 * One value of a setting as a number with its unit: `1.00MSa/s`, `4e-6` with `s` in the next cell.
 *
 * @param index - which of the setting's values.
 * @returns null where that value is no number, as a date or `1 of 2` is none.
 */
export function settingValue(setting: Setting, index = 0): SettingValue | null {
  const match = /^([+-]?[\d.,]+(?:[eE][+-]?\d+)?)\s*([^\d]*)$/.exec(setting.values[index]?.trim() ?? '');
  if (match === null) return null;
  // A head may be written with either mark, whatever the body does.
  const value = parseNumber(match[1]!, '.') ?? parseNumber(match[1]!, ',');
  if (value === null) return null;
  const next = setting.values[index + 1] ?? '';
  const unitText = match[2]! || (unitOf(next) === null ? '' : next) || setting.keyUnit || '';
  return { value, unit: unitOf(unitText.replace(/\/(div|pt|point|sample)$/i, '')) };
}

const MODE_KEY = /^(acq\w*( mode| type)?|sampling mode|sample mode|mode)$/;

const MODES: readonly (readonly [pattern: RegExp, mode: Acquisition])[] = [
  [/peak/i, 'peak detect'],
  [/aver/i, 'average'],
  [/hi(gh)?[\s-]?res/i, 'high resolution'],
  [/envel/i, 'envelope'],
  [/sample|normal|real/i, 'sample'],
];

/** How the instrument made its samples, or null where the settings don't say. */
export function acquisitionSetting(settings: readonly Setting[]): Acquisition | null {
  const value = settings.find((setting) => MODE_KEY.test(setting.key))?.values[0] ?? '';
  return MODES.find(([pattern]) => pattern.test(value))?.[1] ?? null;
}
