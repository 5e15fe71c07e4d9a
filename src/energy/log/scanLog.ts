import { powerOfTen } from '../../base/elementary.ts';
import type { MalformedRow } from '../../read/table/scanRows.ts';
import type { HeadLine } from '../../read/table/table.ts';
import { splitCells } from '../../read/text/dialect.ts';
import { countUpTo } from '../../read/text/textAccess.ts';
import { isNoReading, logNumber } from './logCells.ts';
import type { LogTable } from './logTable.ts';
import { blankStamp, readStamp } from './stamps.ts';

/** All rows of a log, column by column. */
export interface LogRows {
  readonly rowCount: number;
  /** One a column of the file; the one of its three parts that its kind asks for. */
  readonly columns: readonly RowColumn[];
  /** Lines between the rows that are none; each is left out. */
  readonly malformed: readonly MalformedRow[];
  /** Rows before which the line of names stands again. */
  readonly headerBefore: readonly number[];
  /** Lines behind the last row. */
  readonly foot: readonly HeadLine[];
  /** The 1-based line of the file where a row stands. */
  readonly lineOfRow: (row: number) => number;
}

interface RowColumn {
  /** NaN where there is none. */
  readonly numbers: Float64Array | null;
  /** Digits behind the mark, at most; of numbers. */
  readonly decimals: number;
  readonly stamps: StampColumn | null;
  readonly words: WordColumn | null;
}

/** Stamps as they may be read: with the day first, or with the month first. */
export interface StampColumn {
  /** Days since 1970; NaN where there is no such date, 0 where there is no date. */
  readonly dayMonth: Float64Array;
  readonly monthDay: Float64Array;
  /** Of the day, or elapsed; NaN: no stamp in that row. */
  readonly seconds: Float64Array;
  readonly isDated: boolean;
  readonly isTimed: boolean;
  /** The finest that any of them tells apart. */
  readonly unitS: number;
  /** Of the first stamp. */
  readonly zoneMinutes: number;
  readonly written: StampWriting;
}

type StampWriting = ReturnType<typeof blankStamp>['written'];

export interface WordColumn {
  /** Each row's word, as its place in `texts`. */
  readonly codes: Uint16Array;
  readonly texts: readonly string[];
}

const QUOTE = 34;
/** Rows that there is room for before the length of a line is known. */
const FIRST_ROWS = 1024;
/** Later lines may be shorter. */
const SPARE = 1.1;
/** Different words of a column; those behind are all one. */
const MOST_WORDS = 4096;

/** Reads the rows of a log, from its first to the end of the text, in one pass. */
export function scanLog(text: string, table: LogTable): LogRows {
  const { delimiter, kinds, core, headerText, bodyFrom, bodyLine } = table;
  const readers = kinds.map((kind) =>
    kind === 'number'
      ? new NumberReader()
      : kind === 'stamp'
        ? new StampReader()
        : kind === 'word'
          ? new WordReader()
          : null,
  );
  const width = kinds.length;
  const separator = delimiter === 'blanks' ? 32 : delimiter.charCodeAt(0);
  const lastCore = core.at(-1) ?? 0;
  const from = new Int32Array(width);
  const to = new Int32Array(width);
  const malformed: MalformedRow[] = [];
  const headerBefore: number[] = [];
  /** For each line that holds no row: how many rows stand before it. */
  const rowsBeforeOthers: number[] = [];
  let row = 0;
  let capacity = 0;
  let line = bodyLine;

  for (let at = bodyFrom; at < text.length; line++) {
    let end = text.indexOf('\n', at);
    if (end < 0) end = text.length;
    const next = end + 1;
    if (text.charCodeAt(end - 1) === 13 && end > at) end--;
    if (row === capacity) {
      // From then on as many as the lines so far leave room for in the rest of the text, and some.
      const left = row === 0 ? 0 : (SPARE * row * (text.length - at)) / (at - bodyFrom);
      capacity = row + Math.max(FIRST_ROWS, Math.ceil(left));
      for (const reader of readers) reader?.grow(capacity);
    }
    const cells = cellRanges(text, at, end, separator, delimiter === 'blanks', from, to);
    let isRow: boolean;
    if (cells >= 0) isRow = cells > lastCore && readRow(readers, text, from, to, cells, row);
    else {
      const split = splitCells(text.slice(at, end), delimiter);
      isRow = split.length > lastCore && readSplitRow(readers, split, row);
    }
    if (isRow) row++;
    else {
      rowsBeforeOthers.push(row);
      const content = text.slice(at, Math.min(end, at + 512));
      if (headerText !== null && content.trim() === headerText) headerBefore.push(row);
      else if (/[^\s,;|"\t]/.test(content)) malformed.push({ row, line, text: content });
    }
    at = next;
  }
  const isFoot = (one: MalformedRow): boolean => one.row === row;
  return {
    rowCount: row,
    columns: readers.map((reader) => ({ ...NOTHING, ...reader?.column(row) })),
    // What stands right above another line of names is the head of another test.
    malformed: malformed.filter((one) => !isFoot(one) && !headerBefore.includes(one.row)),
    headerBefore: headerBefore.filter((before) => before < row && before > 0),
    foot: malformed.filter(isFoot).map(({ line: at, text: content }) => ({
      line: at,
      text: content,
      cells: splitCells(content, delimiter),
    })),
    lineOfRow: (of) => bodyLine + of + countUpTo(rowsBeforeOthers, of),
  };
}

const NOTHING: RowColumn = { numbers: null, decimals: 0, stamps: null, words: null };

/**
 * Where the cells of a line stand, without blanks and quotes around them.
 *
 * @returns how many there are; −1 where quotes stand so that only a parser tells; one more than there is room for
 * where there are more than that.
 */
function cellRanges(
  text: string,
  lineFrom: number,
  lineTo: number,
  separator: number,
  isBlanks: boolean,
  from: Int32Array,
  to: Int32Array,
): number {
  const room = from.length;
  let cell = 0;
  let at = lineFrom;
  while (at <= lineTo) {
    let code = text.charCodeAt(at);
    while (at < lineTo && (code === 32 || (code === 9 && (isBlanks || separator !== 9))))
      code = text.charCodeAt(++at);
    if (isBlanks && at >= lineTo) break;
    let start = at;
    let stop: number;
    if (code === QUOTE && at < lineTo) {
      start++;
      stop = text.indexOf('"', start);
      if (stop < 0 || stop >= lineTo || text.charCodeAt(stop + 1) === QUOTE) return -1;
      at = stop + 1;
      if (at < lineTo && text.charCodeAt(at) !== separator) return -1;
    } else {
      while (at < lineTo && code !== separator && !(isBlanks && code === 9)) {
        if (code === QUOTE) return -1;
        code = text.charCodeAt(++at);
      }
      stop = at;
    }
    while (start < stop && text.charCodeAt(start) <= 32) start++;
    while (stop > start && text.charCodeAt(stop - 1) <= 32) stop--;
    if (cell === room) {
      // Cells behind the last column: an empty one ends each line of some writers.
      if (stop > start) return -1;
    } else {
      from[cell] = start;
      to[cell++] = stop;
    }
    at++;
  }
  return cell;
}

type Reader = NumberReader | StampReader | WordReader;

function readRow(
  readers: readonly (Reader | null)[],
  text: string,
  from: Int32Array,
  to: Int32Array,
  cells: number,
  row: number,
): boolean {
  let values = 0;
  for (let column = 0; column < readers.length; column++) {
    const reader = readers[column]!;
    if (reader === null) continue;
    const found =
      column < cells ? reader.read(text, from[column]!, to[column]!, row) : reader.read('', 0, 0, row);
    if (found < 0) return false;
    values += found;
  }
  return values > 0;
}

function readSplitRow(readers: readonly (Reader | null)[], cells: readonly string[], row: number): boolean {
  if (cells.length > readers.length && cells.slice(readers.length).some((cell) => cell !== '')) return false;
  let values = 0;
  for (let column = 0; column < readers.length; column++) {
    const cell = cells[column] ?? '';
    const found = readers[column]?.read(cell, 0, cell.length, row) ?? 0;
    if (found < 0) return false;
    values += found;
  }
  return values > 0;
}

/** Readers put a cell's value into a row. They return 1 for a value, 0 for none, −1 for what can't stand there. */
class NumberReader {
  #numbers = new Float64Array(0);
  #decimals = 0;

  grow(capacity: number): void {
    this.#numbers = grown(this.#numbers, new Float64Array(capacity));
  }

  read(text: string, from: number, to: number, row: number): number {
    let at = from;
    let code = text.charCodeAt(at);
    const isNegative = code === 45;
    if (isNegative || code === 43) code = text.charCodeAt(++at);
    let digits = 0;
    const wholeFrom = at;
    let digit = code - 48;
    while (at < to && digit >= 0 && digit <= 9) {
      digits = digits * 10 + digit;
      digit = text.charCodeAt(++at) - 48;
    }
    let count = at - wholeFrom;
    let decimals = 0;
    if (at < to && text.charCodeAt(at) === 46) {
      const fractionFrom = ++at;
      digit = text.charCodeAt(at) - 48;
      while (at < to && digit >= 0 && digit <= 9) {
        digits = digits * 10 + digit;
        digit = text.charCodeAt(++at) - 48;
      }
      decimals = at - fractionFrom;
      count += decimals;
    }
    if (at === to && count > 0 && count <= 15) {
      // Both are exact, and the division rounds once.
      const value = digits / powersOfTen[decimals]!;
      this.#numbers[row] = isNegative ? -value : value;
      if (decimals > this.#decimals) this.#decimals = decimals;
      return 1;
    }
    return this.#readSlowly(text.slice(from, to), row);
  }

  #readSlowly(cell: string, row: number): number {
    const value = cell === '' ? null : logNumber(cell);
    this.#numbers[row] = value ?? Number.NaN;
    if (value !== null) {
      this.#decimals = Math.max(this.#decimals, decimalsOf(cell));
      return 1;
    }
    return isNoReading(cell) ? 0 : -1;
  }

  column(rows: number): Partial<RowColumn> {
    return { numbers: this.#numbers.subarray(0, rows), decimals: this.#decimals };
  }
}

const powersOfTen = Float64Array.from({ length: 16 }, (_, power) => powerOfTen(power));

function decimalsOf(cell: string): number {
  const match = /\d*(?:[.,](\d+))?(?:[eE]([+-]?\d+))?/.exec(cell.replace(/^[^\d]*/, ''));
  return Math.max(0, (match?.[1]?.length ?? 0) - Number(match?.[2] ?? 0));
}

class StampReader {
  #dayMonth = new Float64Array(0);
  #monthDay = new Float64Array(0);
  #seconds = new Float64Array(0);
  #stamp = blankStamp();
  #dated = 0;
  #timed = 0;
  #count = 0;
  #unitS = Number.POSITIVE_INFINITY;
  #zoneMinutes = Number.NaN;
  #written: StampWriting = 'seconds';

  grow(capacity: number): void {
    this.#dayMonth = grown(this.#dayMonth, new Float64Array(capacity));
    this.#monthDay = grown(this.#monthDay, new Float64Array(capacity));
    this.#seconds = grown(this.#seconds, new Float64Array(capacity));
  }

  read(text: string, from: number, to: number, row: number): number {
    const stamp = this.#stamp;
    if (!readStamp(text, stamp, from, to)) {
      this.#seconds[row] = Number.NaN;
      return isNoReading(text.slice(from, to)) ? 0 : -1;
    }
    this.#dayMonth[row] = stamp.dayMonth;
    this.#monthDay[row] = stamp.monthDay;
    this.#seconds[row] = stamp.seconds;
    if (this.#count++ === 0) {
      this.#zoneMinutes = stamp.zoneMinutes;
      this.#written = stamp.written;
    }
    if (stamp.isDated) this.#dated++;
    if (stamp.isTimed) this.#timed++;
    if (stamp.unitS < this.#unitS) this.#unitS = stamp.unitS;
    // Days are written out only once there is one.
    if (stamp.written === 'days and time' && !stamp.isDated) this.#written = stamp.written;
    return 1;
  }

  column(rows: number): Partial<RowColumn> {
    return {
      stamps: {
        dayMonth: this.#dayMonth.subarray(0, rows),
        monthDay: this.#monthDay.subarray(0, rows),
        seconds: this.#seconds.subarray(0, rows),
        isDated: this.#dated > 0,
        isTimed: this.#timed > 0,
        unitS: this.#unitS,
        zoneMinutes: this.#zoneMinutes,
        written: this.#written,
      },
    };
  }
}

class WordReader {
  #codes = new Uint16Array(0);
  #texts: string[] = [];
  #known = new Map<string, number>();
  #last = '\0';
  #lastCode = 0;

  grow(capacity: number): void {
    this.#codes = grown(this.#codes, new Uint16Array(capacity));
  }

  read(text: string, from: number, to: number, row: number): number {
    if (to - from !== this.#last.length || !text.startsWith(this.#last, from)) {
      this.#last = text.slice(from, to);
      this.#lastCode = this.#codeOf(this.#last);
    }
    this.#codes[row] = this.#lastCode;
    return 0;
  }

  #codeOf(word: string): number {
    const known = this.#known.get(word);
    if (known !== undefined) return known;
    if (this.#texts.length >= MOST_WORDS) return MOST_WORDS - 1;
    this.#known.set(word, this.#texts.length);
    return this.#texts.push(word) - 1;
  }

  column(rows: number): Partial<RowColumn> {
    return { words: { codes: this.#codes.subarray(0, rows), texts: this.#texts } };
  }
}

function grown<T extends Float64Array | Uint16Array>(old: T, longer: T): T {
  longer.set(old);
  return longer;
}
