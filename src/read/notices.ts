import type { FactOf, NoFacts } from '../base/notice.ts';

/** What a person must know of how a capture was read. */
export type ReadNotice = FactOf<ReadNotices>;

export interface ReadNotices {
  'channels.currentOnly': { channel: string };
  /** `times`: as much as the first, which is measured; null where that holds nothing. */
  'channels.larger': { channel: string; swing: number; unit: string; first: string; times: number | null };
  'channels.others': { first: string; unit: string; others: readonly string[] };
  'columns.skipped':
    | { why: 'side by side'; exports: number }
    | { why: 'text' | 'envelope' | 'empty'; names: readonly string[] };
  'counts.unscaled': MaybeCounts;
  'current.scaleAssumed': { channel: string; unit: string };
  'data.invented': NoFacts;
  'gaps.found': { channel: string; gaps: number; missing: number; samples: number };
  'rows.blank': { lines: number };
  'rows.counter': { size: number };
  'rows.cut': { lines: number };
  /** `lines`: the first of them; `found`: in the first. */
  'rows.malformed': { lines: readonly number[]; more: number; found: string };
  'scale.implied': MaybeCounts;
  'segments.first': { records: number };
  'time.assumed': NoFacts;
  'time.coarse': NoFacts;
  'time.contradicts': {
    stated: readonly [StatedTime, StatedTime];
    /** The one that counts, and whether the rest of the file agrees with it. */
    best: string;
    isSupported: boolean;
  };
  'time.disagrees': { columnS: number; statedS: number; counts: 'column' | 'settings' };
  'time.rateIgnored': NoFacts;
  'time.uneven': { rows: 'kept on change' } | { rows: 'uneven'; bendPercent: number };
  'unit.assumed': { volts: readonly string[]; amperes: readonly string[] };
  /** `ends`: where the samples count as cut off, in the unit. */
  'wave.overRange': {
    channel: string;
    unit: string;
    marked: number;
    samples: number;
    ends: readonly number[];
  };
}

interface StatedTime {
  readonly key: string;
  readonly intervalS: number;
}

/** Channels whose numbers may be a converter's codes, and what the head hints that one of them may be worth. */
interface MaybeCounts {
  channels: readonly string[];
  hints: readonly ({ readonly channel: string } & CountHint)[];
}

export interface CountHint {
  /** Of one count. */
  readonly factor: number;
  /** From the volts of a division and so many counts that most scopes have in one; null: the head gives one count. */
  readonly division: { readonly volts: number; readonly counts: number } | null;
}
