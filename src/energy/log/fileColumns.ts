import type { StampColumn, WordColumn } from './cellReaders.ts';
import type { LogName } from './logNames.ts';
import { logName } from './logNames.ts';
import type { LogTable } from './logTable.ts';
import type { LogRows } from './scanLog.ts';

/** A column of the file with its name. */
export interface FileColumn {
  /** 0-based. */
  readonly index: number;
  readonly name: LogName;
  /** What it is called: its name, or `column 3`. */
  readonly shown: string;
  readonly numbers: Float64Array | null;
  /** Digits behind the mark, at most. */
  readonly decimals: number;
  readonly stamps: StampColumn | null;
  readonly words: WordColumn | null;
  /** Whether it numbers the rows. */
  readonly countsUp: boolean;
}

/** The columns of a file, those without any content left out. */
export function fileColumns(table: LogTable, rows: LogRows): FileColumn[] {
  const names = (table.names ?? []).map((cell) => logName(cell));
  return rows.columns.flatMap((column, index): FileColumn[] => {
    const said = names[index] ?? logName('');
    const isBlank =
      said.full === '' && column.numbers === null && column.stamps === null && column.words === null;
    if (isBlank) return [];
    // What stands behind the numbers, or in a line of units, is nearer to them than a name.
    const unit = table.units[index] ?? said.unit;
    const name =
      unit === said.unit
        ? said
        : { ...said, unit, quantity: said.quantity === 'other' ? 'other' : unit!.quantity };
    const isRepeated =
      said.full !== '' &&
      names.filter(({ full }) => full.toLowerCase() === said.full.toLowerCase()).length > 1;
    const place = `column ${index + 1}`;
    const shown = said.full === '' ? place : isRepeated ? `${said.full} (${place})` : said.full;
    return [{ ...column, index, name, shown, countsUp: countsUp(column.numbers) }];
  });
}

function countsUp(numbers: Float64Array | null): boolean {
  if (numbers === null || numbers.length < 2) return false;
  for (let row = 1; row < numbers.length; row++) if (numbers[row] !== numbers[row - 1]! + 1) return false;
  return true;
}
