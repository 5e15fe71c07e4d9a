import type { Delimiter } from '../../read/text/dialect.ts';

/** How a log is written, as facts. */
export interface LogLayout {
  /** `wide`: a row holds all readings of its time; `long`: the name of a metric and one value. */
  readonly rowsAre: 'wide' | 'long';
  /** Whether a line above the rows names the columns. */
  readonly isNamed: boolean;
  readonly delimiter: Delimiter;
  /** How the clock is written; null where the rows are only counted. */
  readonly clock: { readonly columns: readonly string[]; readonly written: ClockWriting } | null;
  /** Tests that stand one below the other. */
  readonly tests: number;
  /** Of a long log: the metric that is read. */
  readonly metric: string | null;
}

/** `d/m/y`, `m/d/y`: with any marks, a time behind or in a column of its own. */
export type ClockWriting =
  | ('seconds' | 'milliseconds' | 'minutes' | 'hours' | 'days')
  | ('H:MM' | 'H:MM:SS' | 'H:MM:SS:mmm' | 'days and time')
  | ('ISO 8601' | 'd/m/y' | 'm/d/y' | 'd/m/y or m/d/y')
  | ('epoch seconds' | 'epoch milliseconds' | 'epoch microseconds' | 'rows');
