import { powerOfTen } from '../../base/elementary.ts';
import { isNoReading, logNumber } from './logCells.ts';
import type { LogTable } from './logTable.ts';
import { blankStamp } from './stamp.ts';
import { readStamp } from './stamps.ts';

/** All cells of a column; of its three parts the one that its kind asks for. */
export interface RowColumn {
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

export const NOTHING: RowColumn = { numbers: null, decimals: 0, stamps: null, words: null };

/** Readers put a cell's value into a row. They return 1 for a value, 0 for none, −1 for what can't stand there. */
export type CellReader = NumberReader | StampReader | WordReader;

/** A reader for a column of a kind; null where its cells are not read. */
export function readerOf(kind: LogTable['kinds'][number]): CellReader | null {
  if (kind === 'number') return new NumberReader();
  if (kind === 'stamp') return new StampReader();
  return kind === 'word' ? new WordReader() : null;
}

/** Different words of a column; those behind are all one. */
const MOST_WORDS = 4096;

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
