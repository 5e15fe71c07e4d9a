import type { Limit } from '../measureDocument.ts';
import type { ToldNominal } from '../nominal/mainsNominals.ts';

/** One standard's limits as far as a capture of an outlet can be held against them. */
export interface LimitTable {
  readonly standard: string;
  readonly edition: string;
  /** What the standard is written for, as the end of "limits for …". */
  readonly subject: string;
  /** The class of outlet that the table is for; absent: any. A half left out does not matter. */
  readonly appliesTo?: ToldNominal;
  readonly rows: readonly LimitRow[];
  readonly harmonics?: HarmonicRow;
  /** The standard's own grade in words, for all of its rows together; put before each finding's remark. */
  readonly saying?: { readonly inside: string; readonly outside: string };
}

/** `memory`: quoted without the text or a public page at hand. Such a row informs and never judges. */
export type LimitProvenance = 'public' | 'memory';

interface LimitSource {
  readonly clause: string;
  readonly provenance: LimitProvenance;
  /** What the standard's own statistics ask for and one capture can't give, or whom the row is for. */
  readonly remark: string;
  /**
   * How long a record must be, at the least, for the statistics that the row is written in; absent: the row is
   * for the wave as it is. A shorter capture informs and does not judge.
   */
  readonly neededS?: number;
  /** True where the row is for another place than an outlet, such as where the network meets the building. */
  readonly elsewhere?: boolean;
  /** The kind of output that the row is for; absent: any. */
  readonly wave?: 'sinusoidal' | 'non-sinusoidal';
}

export type LimitRow = LimitSource & {
  readonly limit: Limit;
} & (
    | { readonly quantity: 'RMS voltage' | 'peak voltage'; readonly unit: 'V' | '% of nominal RMS' }
    | { readonly quantity: 'frequency'; readonly unit: 'Hz' | '% of nominal' }
    | {
        readonly quantity: 'THD';
        readonly unit: HarmonicUnit;
        readonly highestOrder: number;
        readonly by?: HarmonicMethod;
      }
    | { readonly quantity: 'deviation factor'; readonly unit: '%' }
    | { readonly quantity: 'edge slope'; readonly unit: 'V/µs' }
  );

/** The same numbers against two bases: the fundamental as it is, or the voltage as it should be. */
export type HarmonicUnit = '% of fundamental' | '% of nominal';

/**
 * How a standard has its harmonics taken: `subgroups` of IEC 61000-4-7 over windows of 10 or 12 cycles, where
 * the record holds one; absent: single orders.
 */
export type HarmonicMethod = 'subgroups';

/** A highest value for each order, 2 and up; an order that is not in the map has no limit. */
export type HarmonicRow = LimitSource & {
  readonly unit: HarmonicUnit;
  readonly by?: HarmonicMethod;
  readonly limitPercent: ReadonlyMap<number, number>;
};
