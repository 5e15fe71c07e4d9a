import { type ErrorMaker, makeError } from '../base/measureError.ts';
import type { NoFacts } from '../base/notice.ts';
import type { Quantity } from './capture.ts';

/** What can be wrong with a file as a capture, or with what is asked of it. */
export interface ReadErrors {
  'file.empty': NoFacts;
  'file.empty.blank': { readonly bytes: number };
  'file.foreign': { readonly kind: ForeignKind };
  /** @property controlShare - of control characters, 0 to 1. */
  'file.binary': { readonly controlShare: number };
  /** @property axis - name of the column of frequencies; null: the head says so. */
  'file.spectrum': { readonly axis: string | null };
  /** @property last - the last line looked at; empty: there is none. */
  'rows.none': { readonly last: string };
  'rows.few': { readonly rows: number; readonly least: number };
  'rows.malformed': { readonly malformed: number; readonly rows: number; readonly found: string };
  'columns.many': { readonly columns: number; readonly most: number };
  'yaml.syntax': { readonly found: YamlFault };
  /** @property textColumn - one whose name says time and that holds no plain numbers. */
  'time.none': { readonly isNumbered: boolean; readonly textColumn: string | null };
  /** Rows too far apart for any wave: a log. @property intervalS - from row to row. */
  'time.slow': { readonly intervalS: number };
  'time.absurd.interval': {
    readonly intervalS: number;
    readonly shortestS: number;
    readonly longestS: number;
  };
  'time.absurd.start': { readonly startS: number; readonly latestS: number };
  /** @property stamp - of every row; null: there is none. */
  'time.still': { readonly stamp: number | null };
  'time.still.coarse': { readonly stamps: number; readonly rows: number };
  'time.backwards': { readonly before: number; readonly after: number };
  'time.uneven': { readonly channel: string };
  'values.none': NoFacts;
  'channels.none': NoFacts;
  'channels.none.measurable': { readonly channels: readonly NamedUnit[] };
  'channels.disagree': { readonly channel: string; readonly differences: readonly TimeBaseDifference[] };
  'channel.unknown': { readonly wanted: string; readonly channels: readonly string[] };
  'channel.unmeasurable': { readonly channel: string; readonly unit: string };
  'channel.unmeasurable.current': { readonly channel: string; readonly unit: string };
  'channel.difference': {
    readonly names: readonly [string, string];
    readonly quantities: readonly [Quantity, Quantity];
  };
  'scale.absurd': { readonly factor: number; readonly least: number; readonly most: number };
}

/** What a file plainly is instead of rows of numbers. */
export type ForeignKind =
  | ('png' | 'jpeg' | 'gif' | 'tiff' | 'bmp' | 'pdf' | 'zip' | 'empty zip' | 'gzip')
  | ('office document' | 'web page' | 'xml');

/** What is no YAML, or more than plain data. */
export type YamlFault =
  /** As the library says it. */
  | { readonly library: string }
  | { readonly is: 'several documents' | 'reference mark' | 'deep' | 'many references' }
  | { readonly is: 'unknown reference' | 'reference to itself'; readonly written: string }
  | { readonly is: 'long'; readonly characters: number };

interface NamedUnit {
  readonly name: string;
  readonly unit: string;
}

/** What two exports of one record should share, as in the capture and as in the other. */
export interface TimeBaseDifference {
  readonly of: 'sampleCount' | 'startS' | 'intervalS';
  readonly values: readonly [number, number];
}

export const readError: ErrorMaker<ReadErrors> = makeError;
