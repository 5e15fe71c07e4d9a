import { hypot } from '../../base/elementary.ts';
import type { Figure } from '../../base/figure.ts';
import type { Harmonic, WaveFigures } from '../../measure/waveFigures.ts';
import type { Limit } from '../decide.ts';
import type { Nominal } from '../nominal/mainsNominals.ts';
import { type HarmonicRow, type LimitRow, percentOfNominal } from './limitTable.ts';

/** A figure and the limit it is held against, in one unit. */
export interface RowFigure {
  /** In words with the unit: `RMS voltage (V)`. */
  readonly quantity: string;
  readonly figure: Figure;
  readonly limit: Limit;
}

/**
 * What a row limits, as measured on this wave.
 *
 * @returns null where the row needs a nominal and there is none.
 */
export function rowFigure(row: LimitRow, figures: WaveFigures, nominal: Nominal | null): RowFigure | null {
  switch (row.quantity) {
    case 'RMS voltage':
    case 'peak voltage': {
      const figure = row.quantity === 'RMS voltage' ? figures.rms : highestPeak(figures);
      const quantity = `${row.quantity} (V)`;
      if (row.unit === 'V') return { quantity, figure, limit: row.limit };
      return nominal && { quantity, figure, limit: percentOf(nominal.voltageV, row.limit) };
    }
    case 'frequency': {
      const figure = figures.frequencyHz;
      const quantity = 'frequency (Hz)';
      if (row.unit === 'Hz') return { quantity, figure, limit: row.limit };
      return nominal && { quantity, figure, limit: percentOf(nominal.frequencyHz, row.limit) };
    }
    case 'THD': {
      const figure = thdToOrder(figures, row.highestOrder);
      const quantity = `THD to order ${Math.min(row.highestOrder, figures.thdOrders)} (${row.unit})`;
      if (row.unit === '% of fundamental') return { quantity, figure, limit: row.limit };
      return (
        nominal && {
          quantity,
          figure: percentOfNominal(figure, figures.fundamental, nominal.voltageV),
          limit: row.limit,
        }
      );
    }
    case 'deviation factor':
      return { quantity: 'deviation factor (%)', figure: figures.deviationFactorPercent, limit: row.limit };
    case 'edge slope':
      return { quantity: 'edge slope (V/µs)', figure: figures.edgeSlope, limit: row.limit };
  }
}

/** The larger of the two extremes, whatever its sign. */
function highestPeak({ peak, trough }: WaveFigures): Figure {
  if (peak.value === null) return peak;
  if (trough.value === null) return trough;
  return peak.value >= -trough.value ? peak : { value: -trough.value, uncertainty: trough.uncertainty };
}

function percentOf(whole: number, { min, max }: Limit): Limit {
  return {
    ...(min === undefined ? {} : { min: (whole * min) / 100 }),
    ...(max === undefined ? {} : { max: (whole * max) / 100 }),
  };
}

/**
 * The harmonics worth a line of their own: the one that takes up most of its limit, then every other one
 * that lies outside its limit, by rising order.
 *
 * @returns empty where there are no harmonics, or the row needs a nominal and there is none.
 * @remarks Each harmonic carries its own uncertainty, or that of the THD where it has none: on the safe side.
 */
export function harmonicFigures(
  row: HarmonicRow,
  figures: WaveFigures,
  nominal: Nominal | null,
): readonly RowFigure[] {
  const limited = figures.harmonics.flatMap((harmonic) => {
    const { order } = harmonic;
    const max = row.limitPercent.get(order);
    const figure = inUnitOf(row, harmonic, figures, nominal);
    if (max === undefined || figure.value === null) return [];
    return [{ order, figure, max, share: figure.value / max }];
  });
  const [first, ...rest] = limited;
  if (!first) return [];
  const worst = rest.reduce((a, b) => (b.share > a.share ? b : a), first);
  return [worst, ...limited.filter((harmonic) => harmonic !== worst && harmonic.share > 1)].map(
    ({ order, figure, max }) => ({ quantity: `harmonic ${order} (${row.unit})`, figure, limit: { max } }),
  );
}

function inUnitOf(
  { unit }: HarmonicRow,
  { percent, uncertaintyPercent }: Harmonic,
  { thdPercent, fundamental }: WaveFigures,
  nominal: Nominal | null,
): Figure {
  if (thdPercent.value === null) return thdPercent;
  const figure = { value: percent, uncertainty: uncertaintyPercent ?? thdPercent.uncertainty };
  if (unit === '% of fundamental') return figure;
  if (nominal === null) return { value: null, reason: 'the nominal voltage is not known' };
  return percentOfNominal(figure, fundamental, nominal.voltageV);
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
