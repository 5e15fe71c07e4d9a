import type { ReadNotice } from '../notices.ts';
import type { HeadLine, TableShape } from '../table/table.ts';
import { type Delimiter, type Dialect, splitCells } from '../text/dialect.ts';
import { parseNumber } from '../text/parseNumber.ts';
import { cleanText } from '../text/textAccess.ts';
import { nameAndUnit, nameSays } from './names.ts';
import { readSettings, type Setting, settingValue } from './settings.ts';
import { type Unit, unitOf } from './unitOf.ts';

/** What the head says of one column of the body. */
export interface ColumnHead {
  /** 0-based column of the file. */
  readonly column: number;
  /** Cleaned; `''` where the file names none. */
  readonly name: string;
  readonly unit: Unit | null;
}

export interface Head {
  /** One for each of the table's columns, in order. */
  readonly columns: readonly ColumnHead[];
  readonly settings: readonly Setting[];
  /** Rows of names and units: 0, 1 or 2. */
  readonly headerRowCount: number;
  /** Names of the columns that hold text. */
  readonly textColumnNames: readonly string[];
}

/** Reads the lines above the body and the cells beside it: names, units, settings. */
export function readHead(table: TableShape): Head {
  const { names, units } = headerRows(table.head, table.columns, table.dialect);
  const columns = table.columns.map((column): ColumnHead => {
    const fromName = nameAndUnit(names?.cells[column] ?? '');
    const unitCell = units?.cells[column] ?? '';
    // A header of units alone ("Second,Volt") still gives its columns something to be called.
    const name = names === null ? cleanText(unitCell) : isGeneric(fromName.name) ? '' : fromName.name;
    return { column, name, unit: unitCell === '' ? fromName.unit : unitOf(unitCell) };
  });
  const isHeader = (line: HeadLine): boolean => line.line === names?.line || line.line === units?.line;
  return {
    columns,
    settings: [
      ...table.head
        .filter((line) => !isHeader(line))
        .flatMap((line) => readSettings(settingCells(line, table.dialect.delimiter))),
      ...settingsBelowNames(table),
      ...table.beside.flatMap(readSettings),
    ],
    headerRowCount: (names === null ? 0 : 1) + (units === null ? 0 : 1),
    textColumnNames: table.textColumns.map((column) =>
      cleanText(names?.cells[column] ?? `column ${column + 1}`),
    ),
  };
}

/** `Waveform Data`, `Value`: what every column of values might be called. */
function isGeneric(name: string): boolean {
  return /^((waveform|wave|sample) )?(data|values?)$/i.test(name);
}

/** Settings that stand on the header rows, right of the body's columns: a name, its number in the next row. */
function settingsBelowNames({ head, columns, dialect }: TableShape): Setting[] {
  const [upper, lower] = head.slice(-2);
  if (upper === undefined || lower === undefined) return [];
  return upper.cells.flatMap((cell, column) => {
    const below = lower.cells[column] ?? '';
    if (cell === '' || columns.includes(column) || parseNumber(below, dialect.decimalMark) === null)
      return [];
    return readSettings({ line: upper.line, text: cell, cells: [cell, below] }).map((setting) => ({
      ...setting,
      column,
    }));
  });
}

/** The head lines that name the columns. Cells are by file column. */
interface HeaderRows {
  readonly names: HeadLine | null;
  readonly units: HeadLine | null;
}

/**
 * Finds the row of names and the row of units just above the body; either may be absent.
 *
 * @param head - the lines above the body, in order.
 * @param columns - 0-based file columns of the body.
 */
function headerRows(head: readonly HeadLine[], columns: readonly number[], dialect: Dialect): HeaderRows {
  const width = columns.at(-1)! + 1;
  const aligned = head
    .slice(-2)
    .map((line) => ({ ...line, cells: alignedCells(line, width, dialect.delimiter), source: line }));
  const last = aligned.at(-1) ?? null;
  const above = aligned.at(-2) ?? null;
  const over = (line: HeadLine): string[] => columns.map((column) => line.cells[column] ?? '');
  const isNumber = (cell: string): boolean => parseNumber(cell, dialect.decimalMark) !== null;
  const fits = (line: HeadLine): boolean =>
    over(line).filter((cell) => cell !== '').length >= Math.max(1, columns.length - 1);
  const isUnits = (line: HeadLine): boolean =>
    fits(line) && over(line).every((cell) => cell === '' || unitOf(cell) !== null);
  const isNames = (line: HeadLine & { source: HeadLine }, mayHoldNumbers: boolean): boolean => {
    const [first = '', ...rest] = over(line);
    if (!fits(line) || isNumber(first) || isSettingLine(line.source, dialect)) return false;
    // `Zero level,128` over a single column.
    if (width === 1 && line.source.cells.length === 2 && isNumber(line.source.cells[1]!)) return false;
    return mayHoldNumbers || isAxisName(first) || !rest.some(isNumber);
  };

  if (last === null) return { names: null, units: null };
  // Over a row of units, a channel may well be named 1.
  if (isUnits(last)) return { names: above !== null && isNames(above, true) ? above : null, units: last };
  if (!isNames(last, false)) return { names: null, units: null };
  return { names: last, units: above !== null && isUnits(above) ? above : null };
}

function isAxisName(cell: string): boolean {
  const { name, unit } = nameAndUnit(cell);
  const says = nameSays(name);
  return unit?.dimension === 'time' || says === 'time' || says === 'index';
}

/** Of a channel by its rank, as nearly every scope names it. */
const CHANNEL_NAME = /^(ch|channel|input|trace)[ _-]?\d{1,2}$/i;

/**
 * `Sample count,Voltage`, `Unit,Time (s),Voltage`: an axis, and beside it what may stand over it. No setting has such
 * values, whatever its key sounds like.
 */
function saysAxisAndFunction(cells: readonly string[]): boolean {
  const named = cells.filter((cell) => cell !== '');
  const [first = '', second = ''] = named;
  if (named.length > 2) return named.some(isAxis) && named.some(isFunction);
  return isAxis(first) && isFunction(second);
}

function isAxis(cell: string): boolean {
  const says = nameSays(nameAndUnit(cell).name);
  return says === 'time' || says === 'index';
}

function isFunction(cell: string): boolean {
  const { name, unit } = nameAndUnit(cell);
  if (CHANNEL_NAME.test(name)) return true;
  // A bare `V` or `s` may be the value of a setting.
  return (
    unitOf(cell) === null && ((unit !== null && unit.dimension !== 'time') || FUNCTIONS.has(nameSays(name)))
  );
}

const FUNCTIONS: ReadonlySet<string> = new Set(['voltage', 'current', 'product']);

/** Words that end the key of a setting and name no channel. */
const SETTING_KEY =
  /\b(units?|interval|rate|increment|scale|offset|origin|reference|length|coupling|atten\w*|probe|date|model|version|serial( number)?|firmware|mode|division|div|bits|resolution|count)$/;

/** `Horizontal Units,s`, `Sample interval 2e-4 s`: a setting, though its cells would fit the columns. */
function isSettingLine(line: HeadLine, dialect: Dialect): boolean {
  if (saysAxisAndFunction(line.cells)) return false;
  const [setting] = readSettings(settingCells(line, dialect.delimiter));
  if (setting === undefined) return false;
  return SETTING_KEY.test(setting.key) && (setting.values.length <= 2 || settingValue(setting) !== null);
}

/** A first cell that says what its row holds, one more than there are columns. */
const ROW_LABEL = /^(names?|units?|channels?|labels?|signals?|quantity)\s*:?$/i;

/**
 * The cells of a header line, one a file column where that can be had. A header may be written with
 * another delimiter than the rows below it, and names may hold the blanks that part the rows.
 *
 * @param width - file columns of the body.
 */
function alignedCells(line: HeadLine, width: number, delimiter: Delimiter): readonly string[] {
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

/**
 * A line of settings with its cells as its own writer parted them: where blanks part the rows of numbers,
 * they are inside the keys above them.
 */
function settingCells(line: HeadLine, delimiter: Delimiter): HeadLine {
  if (delimiter !== 'blanks') return line;
  const other = ([',', ';'] as const).find((candidate) => line.text.includes(candidate));
  const cells = other === undefined ? line.text.trim().split(/\t+|\s{2,}/) : splitCells(line.text, other);
  return { ...line, cells };
}

/** The word itself: as a part of a name, of a file or a folder, it says nothing. */
const INVENTED = /(?<![\w./\\-])invented(?![\w/\\-]|\.\w)/i;

/**
 * A file that says of itself that its data are invented is passed on as such: nobody should take a demonstration for
 * a measurement.
 *
 * @returns one notice, or none.
 */
export function inventedNotice(lines: readonly HeadLine[]): readonly ReadNotice[] {
  return lines.some(({ text }) => INVENTED.test(text)) ? [{ code: 'data.invented' }] : [];
}
