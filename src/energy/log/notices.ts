import type { FactOf } from '../../base/notice.ts';
import type { ReadNotices } from '../../read/notices.ts';
import type { FlowKey } from './logErrors.ts';

/** What a person must know of how a log was read. */
export type LogNotice = FactOf<LogNotices & Pick<ReadNotices, 'rows.cut' | 'rows.malformed'>>;

export interface LogNotices {
  /** A column of times without a unit, taken for seconds. */
  'clock.assumed': { column: string };
  /** `lines`: the first few where it happens. */
  'clock.back': { lines: readonly number[]; times: number };
  /** Rows whose stamp repeats the one before, spread evenly inside what a stamp can tell apart. */
  'clock.equal': { rows: number; stepS: number };
  /** Another clock, which runs so much longer, or shorter, over the log. */
  'clock.others': { used: readonly string[]; other: readonly string[]; differencePercent: number };
  /** No clock, but a told interval: each row counts as one step of it. */
  'clock.rows': { intervalS: number };
  'columns.others': { key: FlowKey; first: string; others: readonly string[] };
  /** What columns without names were found to be by what they are to each other. */
  'columns.unnamed': {
    power: string | null;
    volts: string | null;
    amps: string | null;
    counter: string | null;
  };
  'counter.unknown': { column: string };
  /** `lines`: where each but the first begins, the first few. */
  'tests.stacked': { tests: number; lines: readonly number[] };
  'units.assumed': { columns: readonly NamedUnit[] };
  /** Told by volts times amperes against the power. */
  'units.product': { columns: readonly NamedUnit[] };
  /** `times`: as much as volts times amperes, to a power of a thousand. */
  'units.contradict': { columns: readonly NamedUnit[]; times: number };
}

interface NamedUnit {
  readonly name: string;
  readonly unit: string;
}
