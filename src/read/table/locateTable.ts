import type { MeasureError } from '../../base/measureError.ts';
import { readError } from '../readErrors.ts';
import { detectDialect } from '../text/detectDialect.ts';
import { type DecimalMark, splitCells } from '../text/dialect.ts';
import { holdsNumberOrMissing } from '../text/parseNumber.ts';
import { cleanText, lineAt, sampleLines, type TextAccess } from '../text/textAccess.ts';
import { rowWidths } from './rowWidths.ts';
import type { HeadLine, TableShape } from './table.ts';

/** Lines looked at to learn delimiter and columns. */
const SAMPLE_LINES = 400;
/** Rows of the body beside which settings are looked for. */
const BESIDE_ROWS = 64;

/** Of a table: what is wider is no capture. */
const MOST_COLUMNS = 512;
/** Characters of a row that show whether it is wider: some sixty a cell. */
const LONGEST_LOOK = 2 ** 15;
/** Characters, and cells, of a line above the rows. */
const LONGEST_HEAD_LINE = 8192;
const LONGEST_HEAD_CELL = 512;
const MOST_HEAD_CELLS = 2 * MOST_COLUMNS;

/**
 * Finds the rows of numbers in a text, and keeps what stands above and beside them for the head's reader.
 *
 * @throws MeasureError `rows.none` where no line is a row of numbers; `columns.many` where they are wider than any
 * capture.
 */
export function locateTable(text: TextAccess): TableShape {
  const samples = sampleLines(text, SAMPLE_LINES);
  const looked = samples.map((line) => line.slice(0, LONGEST_LOOK));
  const dialect = detectDialect(looked);
  if (dialect === null) throw noRows(samples.at(-1) ?? '');
  const split = (line: string): string[] => splitCells(line, dialect.delimiter);
  const found = bodyColumns(looked.map(split), dialect.decimalMark);
  const { columns, core, textColumns } = found;
  if (columns.length + textColumns.length > MOST_COLUMNS) throw tooWide(split(samples.at(-1)!).length);
  if (core.length === 0) throw noRows(samples.at(-1) ?? '');

  const labelColumn = core[0]! - 1;
  /** `Delta,1e-3,1e-3` over rows that start with an empty cell: a key right before what would be its row. */
  const isLabelled = (cells: readonly string[]): boolean =>
    !textColumns.includes(labelColumn) &&
    cells.findIndex((cell) => cell !== '') === labelColumn &&
    !holdsNumberOrMissing(cells[labelColumn], dialect.decimalMark);
  const isRow = (cells: readonly string[]): boolean =>
    !isLabelled(cells) &&
    core.every((column) => holdsNumberOrMissing(cells[column], dialect.decimalMark)) &&
    core.some((column) => (cells[column] ?? '') !== '');
  const isWords = (cells: readonly string[]): boolean => {
    const filled = core.map((column) => cells[column] ?? '').filter((cell) => cell !== '');
    return filled.length > 0 && filled.every((cell) => !holdsNumberOrMissing(cell, dialect.decimalMark));
  };

  const head: HeadLine[] = [];
  for (let from = 0, line = 1; from < text.length; line++) {
    const { to, next } = lineAt(text, from);
    const content = text.slice(from, to);
    const cells = split(content);
    // A row of numbers over a row of words is a header whose channels are named 1, 2, 4.
    if (isRow(cells) && !isWords(split(nextContent(text, next)))) {
      const beside = settingsBeside(text, from, line, columns, split);
      const rows = samples.map(split).filter(isRow);
      return {
        ...{ dialect, head, beside, ...found, ...rowWidths(rows, head, found.columns, dialect) },
        bodyFrom: from,
        bodyLine: line,
      };
    }
    if (cells.some((cell) => cell !== '')) head.push(bounded(line, content, cells));
    from = next;
  }
  throw noRows(head.at(-1)?.text ?? '');
}

/** The next line with any content, or the empty text. */
function nextContent(text: TextAccess, from: number): string {
  for (let at = from; at < text.length; ) {
    const { to, next } = lineAt(text, at);
    if (to > at) return text.slice(at, to);
    at = next;
  }
  return '';
}

/** A line of the head without what no name or setting needs: what reads it may try many ways. */
function bounded(line: number, text: string, cells: readonly string[]): HeadLine {
  return {
    line,
    text: shortened(text, LONGEST_HEAD_LINE),
    cells: cells.slice(0, MOST_HEAD_CELLS).map((cell) => shortened(cell, LONGEST_HEAD_CELL)),
  };
}

/** Marked where it is cut, lest what is left mean something. */
function shortened(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}

function settingsBeside(
  text: TextAccess,
  bodyFrom: number,
  bodyLine: number,
  columns: readonly number[],
  split: (line: string) => string[],
): HeadLine[] {
  const beside: HeadLine[] = [];
  for (let from = bodyFrom, line = bodyLine; from < text.length && line < bodyLine + BESIDE_ROWS; line++) {
    const { to, next } = lineAt(text, from);
    const cells = split(text.slice(from, to)).map((cell, column) => (columns.includes(column) ? '' : cell));
    if (cells.some((cell) => cell !== '')) beside.push({ line, text: cells.join(' ').trim(), cells });
    from = next;
  }
  return beside;
}

function noRows(last: string): MeasureError {
  return readError('rows.none', { last: cleanText(last, 40) });
}

function tooWide(count: number): MeasureError {
  return readError('columns.many', { columns: count, most: MOST_COLUMNS });
}

interface BodyColumns {
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
function bodyColumns(rows: readonly (readonly string[])[], mark: DecimalMark): BodyColumns {
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
