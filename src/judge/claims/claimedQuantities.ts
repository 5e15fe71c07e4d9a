import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { WaveFigures } from '../../measure/waveFigures.ts';
import type { Limit } from '../decide.ts';
import { notJudgeable } from '../reasons.ts';

/** What one capture can show of an outlet, and a maker may claim in numbers, by its key in documents. */
export type ClaimedFigure = 'rmsV' | 'frequencyHz' | 'thdPercent' | 'crestFactor' | 'transferS';

/** What a maker says of the unit as a whole: it takes several captures, or an energy. */
export type UnitQuantity = 'powerW' | 'surgeW' | 'capacityWh' | 'conversionEfficiencyPercent';

/** What is said of any quantity that can be claimed. */
interface QuantityEntry {
  readonly name: string;
  /** Of the value found. */
  readonly unit: string;
  /** Each a whole claim; the first is shown where one is enough. */
  readonly examples: readonly [string, ...string[]];
}

interface OutletQuantity extends QuantityEntry {
  /** A claim of a form of its own. @returns null where a claim is none of this quantity. */
  readonly form?: (plain: string) => Limit | null;
  /** The word that names it, as it may stand before the numbers. */
  readonly word?: RegExp;
  /** Written after the numbers; null: nothing is. */
  readonly written: 'V' | 'Hz' | '%' | null;
  /** The unit alone tells it: percent and bare numbers can be several things, and need a word. */
  readonly isToldByUnit?: true;
  /** A wave that was cut off has less of it, or other. */
  readonly isOfWholeWave?: true;
  /** What a capture shows of it. */
  readonly shown: (seen: {
    readonly figures: WaveFigures;
    readonly transfersS?: readonly MeasuredFigure[];
  }) => Figure;
}

/** How long the outlet may be without voltage when the mains go: `transfer < 20 ms`, `UPS, under 20 ms`. */
const TRANSFER =
  /^(?:UPS|EPS|transfer(?: ?time)?)[ ,:]*(?:<=?|under|below|within|up to|max(?:imum)?) ?(\d+(?:[.,]\d+)?) ?(ms|s)$/i;

/** Of one capture, in the order in which they are listed. */
export const outletQuantities: Readonly<Record<ClaimedFigure, OutletQuantity>> = {
  rmsV: {
    ...{ name: 'RMS voltage', unit: 'V', written: 'V', isToldByUnit: true, isOfWholeWave: true },
    word: /^(?:(?:RMS\s+)?voltage|RMS)\b/i,
    examples: ['120 V ±5 %', '230 V +6/-10 %', '110..127 V'],
    shown: ({ figures }) => figures.rms,
  },
  frequencyHz: {
    ...{ name: 'frequency', unit: 'Hz', written: 'Hz', isToldByUnit: true },
    word: /^frequency\b/i,
    examples: ['60 Hz ±0.5 Hz'],
    shown: ({ figures }) => figures.frequencyHz,
  },
  thdPercent: {
    ...{ name: 'THD', unit: '%', written: '%', isOfWholeWave: true },
    word: /^THD\b/i,
    examples: ['THD < 3 %'],
    shown: ({ figures }) => figures.thdPercent,
  },
  crestFactor: {
    ...{ name: 'crest factor', unit: '', written: null, isOfWholeWave: true },
    word: /^crest(?:\s*factor)?\b/i,
    examples: ['crest 1.38..1.45'],
    shown: ({ figures }) => figures.crestFactor,
  },
  transferS: {
    ...{ name: 'transfer time', unit: 's', written: null },
    form: (plain) => {
      const [, digits, unit] = TRANSFER.exec(plain) ?? [];
      if (digits === undefined) return null;
      const value = Number(digits.replace(',', '.'));
      return { max: unit!.toLowerCase() === 'ms' ? value / 1000 : value };
    },
    examples: ['transfer < 20 ms'],
    shown: ({ transfersS: [first, ...rest] = [] }) =>
      // The longest one decides what the outlet can promise.
      first === undefined
        ? notJudgeable({ code: 'claim.noTransfer' })
        : rest.reduce((longest, one) => (one.value > longest.value ? one : longest), first),
  },
};

/** The word that names it stands first. */
interface OfUnit extends QuantityEntry {
  readonly word: RegExp;
}

/** Of a unit over several captures. */
export const unitQuantities: Readonly<Record<UnitQuantity, OfUnit>> = {
  powerW: {
    ...{ name: 'power', unit: 'W', word: /^(?:(?:continuous|rated) )?power\b/i },
    examples: ['power 600 W'],
  },
  surgeW: {
    ...{ name: 'surge', unit: 'W', word: /^(?:surge(?: power)?|peak power|peak(?=[ :=]*\d))\b/i },
    examples: ['surge 1200 W for 5 s'],
  },
  capacityWh: {
    ...{ name: 'capacity', unit: 'Wh', word: /^capacity\b/i },
    examples: ['capacity 500 Wh'],
  },
  conversionEfficiencyPercent: {
    ...{ name: 'efficiency', unit: '%', word: /^(?:(?:conversion|inverter) )?efficiency\b/i },
    examples: ['efficiency > 85 %'],
  },
};

/** The quantity of a unit that a claim is about; undefined: none. */
export function unitQuantityIn(plain: string): UnitQuantity | undefined {
  return (Object.keys(unitQuantities) as UnitQuantity[]).find((key) => unitQuantities[key].word.test(plain));
}

const [outlet, ofUnit] = [Object.values(outletQuantities), Object.values(unitQuantities)];

/** Claims of one capture as examples, each whole: the kind of wave, then every form of each quantity. */
export const everyClaimExample: readonly string[] = [
  'pure sine',
  ...outlet.flatMap(({ examples }) => examples),
];
/** The same, one of each quantity. */
export const claimExamples: readonly string[] = [
  'pure sine',
  ...outlet.map(({ examples: [first] }) => first),
];
/** Of a unit. */
export const unitClaimExamples: readonly string[] = ofUnit.map(({ examples: [first] }) => first);

/** What a claim takes to be told, as a list in words: "V, Hz, THD, crest or transfer". */
export function toldByWords(by?: 'unit' | 'word'): string {
  const words = outlet
    .filter(
      ({ isToldByUnit = false, form }) =>
        by === undefined || (form === undefined && isToldByUnit === (by === 'unit')),
    )
    .map(({ isToldByUnit, written, examples: [first] }) => (isToldByUnit ? written! : first.split(' ')[0]!));
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}
