import type { DecimalMark } from './dialect.ts';
import { holdsNumberOrMissing } from './holdsNumberOrMissing.ts';

export interface BodyColumns {
  /** Columns of numbers, ascending, 0-based. */
  readonly columns: readonly number[];
  /** Those of them that nearly every row fills: what makes a line a row of the body. */
  readonly core: readonly number[];
  readonly textColumns: readonly number[];
  /** Those of the columns that print whole numbers without mark or exponent, as a converter's codes are. */
  readonly wholeColumns: readonly number[];
}

/** A column in fewer of the rows than this is something written beside them. */
const LEAST_SHARE = 0.25;
const CORE_SHARE = 0.75;
/** Of all lines: fewer rows of numbers than this are no body. */
const LEAST_SHARE_OF_LINES = 0.1;
/** Numbers in the lines above may stand in the same column. */
const WHOLE_SHARE = 0.9;

/**
 * Which columns of a table hold its numbers, learnt from lines spread over the whole file, because the
 * first rows may have settings beside them and the last may be those of the longer of two exports.
 *
 * @param rows - cells of the sampled lines, head lines among them.
 */
export function bodyColumns(rows: readonly (readonly string[])[], mark: DecimalMark): BodyColumns {
  const width = rows.reduce((most, cells) => Math.max(most, cells.length), 0);
  const numbers = new Array<number>(width).fill(0);
  const wholes = new Array<number>(width).fill(0);
  const words = new Array<number>(width).fill(0);
  const besideWords = new Array<number>(width).fill(0);
  for (const cells of rowsOfNumbers(rows, mark)) {
    cells.forEach((cell, column) => {
      if (cell === '') return;
      if (isWord(cell, mark)) {
        words[column]!++;
        return;
      }
      numbers[column]!++;
      if (/^[+-]?\d+$/.test(cell)) wholes[column]!++;
      const left = cells[column - 1] ?? '';
      if (left !== '' && isWord(left, mark)) besideWords[column]!++;
    });
  }
  const most = numbers.reduce((a, b) => Math.max(a, b), 0);
  const every = [...numbers.keys()];
  const columns = every.filter((column) => {
    const count = numbers[column]!;
    // A number right of a word, in some rows only, is the value of a setting.
    const isSetting = count < CORE_SHARE * most && besideWords[column]! > count / 2;
    return count > LEAST_SHARE * most && count > words[column]! && !isSetting;
  });
  const isColumn = new Set(columns);
  return {
    columns,
    wholeColumns: columns.filter((column) => wholes[column]! > WHOLE_SHARE * numbers[column]!),
    core: columns.filter((column) => numbers[column]! > CORE_SHARE * most),
    textColumns: every.filter((column) => !isColumn.has(column) && words[column]! > CORE_SHARE * most),
  };
}

/**
 * The lines that are numbers for the greater part, so that a head longer than the body doesn't outvote it;
 * all of them where such lines are few, as where half of each row is words.
 */
function rowsOfNumbers(
  rows: readonly (readonly string[])[],
  mark: DecimalMark,
): readonly (readonly string[])[] {
  const found = rows.filter((cells) => {
    const filled = cells.filter((cell) => cell !== '');
    return filled.filter((cell) => !isWord(cell, mark)).length > filled.length / 2;
  });
  return found.length > LEAST_SHARE_OF_LINES * rows.length ? found : rows;
}

function isWord(cell: string, mark: DecimalMark): boolean {
  return !holdsNumberOrMissing(cell, mark);
}
