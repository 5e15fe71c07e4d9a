import { cleanText } from '../../bytes/cleanText.ts';
import { parseNumber } from '../../bytes/parseNumber.ts';
import type { HeadLine, TableShape } from '../../bytes/table.ts';
import { headerRows } from './headerRows.ts';
import { nameAndUnit } from './nameAndUnit.ts';
import { readSettings } from './readSettings.ts';
import type { Setting } from './setting.ts';
import { settingCells } from './settingCells.ts';
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
