import { hypot } from '../../base/elementary.ts';
import type { Figure } from '../../base/figure.ts';
import type { WaveFigures } from '../../measure/waveFigures.ts';
import type { Nominal } from '../nominal/mainsNominals.ts';

/** What a quantity of a limit is: how tables write it, and the figure that it limits. */
interface QuantityEntry {
  /** Of the figure itself, as a row may be written in. */
  readonly unit: string;
  /** In which a row may be written too: the nominal that it is a percentage of, and that unit. */
  readonly share?: { readonly of: keyof Pick<Nominal, 'voltageV' | 'frequencyHz'>; readonly unit: string };
  /** @param highestOrder - that the row counts to, for a quantity that is counted over orders. */
  readonly figure: (figures: WaveFigures, highestOrder: number) => Figure;
  /** A row says to which order it counts, and may be in percent of the fundamental or of the nominal voltage. */
  readonly isOfHarmonics?: true;
  /** What a reader would quote, first of all; absent: not before others. */
  readonly quoted?: number;
}

/** Every quantity that a row can limit, by its name in a finding. */
const QUANTITIES = {
  'RMS voltage': {
    unit: 'V',
    share: { of: 'voltageV', unit: '% of nominal RMS' },
    figure: ({ rms }: WaveFigures): Figure => rms,
    quoted: 1,
  },
  'peak voltage': {
    unit: 'V',
    share: { of: 'voltageV', unit: '% of nominal RMS' },
    figure: ({ peak, trough }: WaveFigures): Figure => higher(peak, trough),
  },
  frequency: {
    unit: 'Hz',
    share: { of: 'frequencyHz', unit: '% of nominal' },
    figure: ({ frequencyHz }: WaveFigures): Figure => frequencyHz,
    quoted: 2,
  },
  THD: {
    unit: '% of fundamental',
    isOfHarmonics: true,
    figure: (figures: WaveFigures, highestOrder: number): Figure => thdToOrder(figures, highestOrder),
    quoted: 0,
  },
  'deviation factor': {
    unit: '%',
    figure: ({ deviationFactorPercent }: WaveFigures): Figure => deviationFactorPercent,
  },
  'edge slope': { unit: 'V/µs', figure: ({ edgeSlope }: WaveFigures): Figure => edgeSlope },
} as const;

type Catalogue = typeof QUANTITIES;

/** A quantity that rows limit. */
export type LimitQuantity = keyof Catalogue;

/** Those that are counted over orders. */
export type HarmonicQuantity = {
  [Q in LimitQuantity]: Catalogue[Q] extends { readonly isOfHarmonics: true } ? Q : never;
}[LimitQuantity];

/** The units that a row of a quantity may be written in. */
export type UnitOf<Q extends LimitQuantity> =
  | Catalogue[Q]['unit']
  | (Catalogue[Q] extends { readonly share: { readonly unit: infer Unit } } ? Unit : never);

export const limitQuantities: Readonly<Record<LimitQuantity, QuantityEntry>> = QUANTITIES;

/** The larger of the two extremes, whatever its sign. */
function higher(peak: Figure, trough: Figure): Figure {
  if (peak.value === null) return peak;
  if (trough.value === null) return trough;
  return peak.value >= -trough.value ? peak : { value: -trough.value, uncertainty: trough.uncertainty };
}

/**
 * THD counted to the order that a standard counts to.
 *
 * THD = 100 · sqrt( Σ V_n², n = 2 … highestOrder ) / V_1
 *
 * @param highestOrder - whole, 2 and up; orders that were not measured are left out.
 * @returns percent of the fundamental. Where it takes in all orders measured, the figure as it stands.
 * @remarks The uncertainty is that of the whole THD, unchanged. Equal and independent errors σ of the V_n
 * give a root sum of squares the error σ however many there are, so that part carries over exactly; a part
 * proportional to the THD can only be smaller for fewer orders, so the whole is on the safe side.
 */
export function thdToOrder(figures: WaveFigures, highestOrder: number): Figure {
  const { thdPercent, thdOrders, harmonics } = figures;
  if (thdPercent.value === null || highestOrder >= thdOrders) return thdPercent;
  const counted = harmonics.filter(({ order }) => order >= 2 && order <= highestOrder);
  return { value: hypot(...counted.map(({ percent }) => percent)), uncertainty: thdPercent.uncertainty };
}
