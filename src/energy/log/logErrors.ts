import { type ErrorMaker, makeError } from '../../base/measureError.ts';

/** What an energy can be made of, a column each. */
export type FlowKey = 'power' | 'volts' | 'amps';

/** What of a log's reading a person may have to tell. */
export type LogOptionKey = FlowKey | 'counter' | 'side' | 'timeOrder';

/** What can be wrong with a file as an energy log, or with what is told of it. */
export interface LogErrors {
  /** A fast raster: a waveform. @property stepS - from row to row. */
  'log.capture': { readonly rows: number; readonly stepS: number };
  'log.rows': { readonly rows: number; readonly least: number };
  'log.time': { readonly columns: readonly string[]; readonly isNumbered: boolean };
  /** @property durationsS - of the log with the day first, and with the month first. */
  'log.time.order': { readonly stamp: string; readonly durationsS: readonly [number, number] };
  'log.column.unknown': {
    readonly key: LogOptionKey;
    readonly wanted: string;
    readonly columns: readonly string[];
  };
  /** Several columns that the answer may be made of. */
  'log.column.choose': { readonly key: LogOptionKey; readonly columns: readonly string[] };
  /** Nothing that an energy can be made of is named. */
  'log.quantity': { readonly columns: readonly string[]; readonly isNamed: boolean };
  /** Amperes without volts, or volts without amperes. */
  'log.quantity.half': { readonly has: 'volts' | 'amps'; readonly columns: readonly string[] };
  /** @property units - that its numbers may stand in; `most`: the largest of them. */
  'log.unit': {
    readonly key: LogOptionKey;
    readonly column: string;
    readonly most: number;
    readonly units: readonly string[];
  };
  /** Volts and amperes of which it isn't known whether they are a mains'. */
  'log.side': { readonly volts: number };
}

export const logError: ErrorMaker<LogErrors> = makeError;
