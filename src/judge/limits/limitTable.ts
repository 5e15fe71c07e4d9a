import { hypot } from '../../base/elementary.ts';
import type { Figure } from '../../base/figure.ts';
import type { Limit } from '../decide.ts';
import { apartRatio, mainsNominals, type Nominal, type ToldNominal } from '../nominal/mainsNominals.ts';
import type { HarmonicQuantity, LimitQuantity, UnitOf } from './limitQuantities.ts';

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

export type LimitRow = LimitSource & { readonly limit: Limit } & {
    [Q in LimitQuantity]: Q extends HarmonicQuantity
      ? {
          readonly quantity: Q;
          readonly unit: HarmonicUnit;
          readonly highestOrder: number;
          readonly by?: HarmonicMethod;
        }
      : { readonly quantity: Q; readonly unit: UnitOf<Q> };
  }[LimitQuantity];

/** The same numbers against two bases: the fundamental as it is, or the voltage as it should be. */
type HarmonicUnit = '% of fundamental' | '% of nominal';

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

/** A told nominal of 220 V belongs with 230 V, one of 110 or 115 V with 120 V; 208 V belongs with none. */
const CLASS_REACH = 1.1;

/**
 * Whether limits for a class of outlet hold for this one.
 *
 * @param appliesTo - a class; absent: any outlet, known or not.
 */
export function isForNominal(appliesTo: ToldNominal | undefined, nominal: Nominal | null): boolean {
  if (appliesTo === undefined) return true;
  if (nominal === null || nominal.frequencyHz !== appliesTo.frequencyHz) return false;
  return appliesTo.voltageV === undefined || appliesTo.voltageV === voltageClassV(nominal);
}

function voltageClassV(nominal: Nominal): number | null {
  const apart = (voltageV: number) => apartRatio(nominal.voltageV, voltageV);
  const [nearest] = mainsNominals
    .filter(({ frequencyHz }) => frequencyHz === nominal.frequencyHz)
    .map(({ voltageV }) => voltageV)
    .sort((a, b) => apart(a) - apart(b));
  return nearest !== undefined && apart(nearest) <= CLASS_REACH ? nearest : null;
}

/**
 * A percentage of the fundamental told in percent of the nominal voltage: p · V_1 / V_nominal.
 *
 * @param percent - of the fundamental.
 * @param fundamentalV - RMS.
 * @returns with both uncertainties, taken as independent: U² = (U_p · V_1)² + (p · U_V1)², over V_nominal.
 */
export function percentOfNominal(percent: Figure, fundamentalV: Figure, nominalV: number): Figure {
  if (percent.value === null) return percent;
  if (fundamentalV.value === null) return fundamentalV;
  return {
    value: (percent.value * fundamentalV.value) / nominalV,
    uncertainty:
      hypot(percent.uncertainty * fundamentalV.value, percent.value * fundamentalV.uncertainty) / nominalV,
  };
}

/** Lengths that statistics of supply standards take at the least, in seconds. */
export const THREE_SECONDS_S = 3;
export const TEN_SECONDS_S = 10;
export const TEN_MINUTES_S = 600;
export const A_WEEK_S: number = 7 * 24 * 3600;
