import type { LogLayout } from './logLayout.ts';
import type { LogNotice } from './notices.ts';

/**
 * A slow record of volts, amperes, watts or a counter: base units (V, A, W, Wh, Ah), one clock. Arrays have `rows`
 * elements; NaN: no reading in that row.
 */
export interface EnergyLog {
  readonly rows: number;
  /**
   * Seconds since the first row; never decreasing within a part; equal stamps are already spread inside the stamp's
   * unit. A part whose clock starts anew or is set back goes on from its own first stamp where the clock is absolute,
   * and from the end of the part before where it is not.
   */
  readonly timesS: Float64Array;
  /** First row of each part, 0 first: a part begins where the clock is set back or a stacked test begins. */
  readonly partStarts: readonly number[];
  readonly clock: LogClock;
  /** How a row stands for the time around it. */
  readonly sampling: 'instantaneous' | 'mean until the row' | 'held from the row';
  readonly volts: LogColumn | null;
  readonly amps: LogColumn | null;
  readonly watts: LogColumn | null;
  readonly counters: readonly LogCounter[];
  /** What the log itself says of each row; null where it has no such column. */
  readonly modes: readonly LogMode[] | null;
  /**
   * What a positive ampere or watt means: known from modes, counters or falling and rising volts; 'unsigned': one way
   * only or not told.
   */
  readonly positive: 'charge' | 'discharge' | 'unsigned';
  readonly side: 'ac' | 'dc' | null;
  /** Totals that stand in head or foot, in Wh and Ah. */
  readonly totals: readonly LogTotal[];
  /** What each column of the file is; `unit` as the file's numbers are to be read: `mWh`. */
  readonly columns: readonly NamedColumn[];
  readonly layout: LogLayout;
  readonly notices: readonly LogNotice[];
}

interface LogClock {
  /** `rows`: the file has none, and each row counts as one step of it. */
  readonly kind: 'absolute' | 'elapsed' | 'rows';
  /** What a stamp can tell apart. */
  readonly stepS: number;
  /** ISO 8601, without zone where the file names none; null where the clock is not absolute. */
  readonly startTime: string | null;
}

export type LogMode = 'charge' | 'discharge' | 'idle' | null;

export interface LogColumn {
  /** As the file names it, `column 3` where it doesn't. */
  readonly name: string;
  readonly values: Float64Array;
  /** Smallest step between readings (quantisation), base unit. */
  readonly step: number;
}

/** A column that counts energy (Wh) or charge (Ah). */
export interface LogCounter extends LogColumn {
  readonly quantity: 'energy' | 'charge';
  /** `remaining`: what is left in the battery. */
  readonly kind: 'cumulative' | 'per interval' | 'remaining';
}

export interface LogTotal {
  readonly quantity: 'energy' | 'charge';
  /** In Wh or Ah. */
  readonly value: number;
  readonly place: 'head' | 'foot';
}

export interface NamedColumn {
  readonly name: string;
  readonly quantity: LogQuantity;
  /** As the file's numbers are to be read, `''` for what has none. */
  readonly unit: string;
}

/** What a column of a log holds. `other`: what no energy is made of. */
export type LogQuantity =
  | ('time' | 'voltage' | 'current' | 'power' | 'energy' | 'charge' | 'temperature')
  | ('power factor' | 'apparent power' | 'frequency' | 'mode' | 'metric' | 'row number' | 'other');
