import type { Dialect } from '../../bytes/dialect.ts';
import { parseNumber } from '../../bytes/parseNumber.ts';
import type { HeadLine } from '../../bytes/table.ts';
import { alignedCells } from './alignedCells.ts';
import { nameAndUnit } from './nameAndUnit.ts';
import { nameSays } from './nameSays.ts';
import { readSettings } from './readSettings.ts';
import { settingCells } from './settingCells.ts';
import { settingValue } from './settingValue.ts';
import { unitOf } from './unitOf.ts';

/** The head lines that name the columns. Cells are by file column. */
export interface HeaderRows {
  readonly names: HeadLine | null;
  readonly units: HeadLine | null;
}

/**
 * Finds the row of names and the row of units just above the body; either may be absent.
 *
 * @param head - the lines above the body, in order.
 * @param columns - 0-based file columns of the body.
 */
export function headerRows(
  head: readonly HeadLine[],
  columns: readonly number[],
  dialect: Dialect,
): HeaderRows {
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
