import type { Figure } from '../../base/figure.ts';
import type { Harmonic, WaveFigures } from '../../measure/waveFigures.ts';
import type { Limit } from '../decide.ts';
import type { Nominal } from '../nominal/mainsNominals.ts';
import { notJudgeable } from '../reasons.ts';
import { limitQuantities } from './limitQuantities.ts';
import { type HarmonicRow, type LimitRow, percentOfNominal } from './limitTable.ts';

/** A figure and the limit it is held against, in one unit. */
export interface RowFigure {
  /** In words with the unit: `RMS voltage (V)`. */
  readonly quantity: string;
  /** That figure and limit are in. */
  readonly unit: string;
  readonly figure: Figure;
  readonly limit: Limit;
}

/**
 * What a row limits, as measured on this wave.
 *
 * @returns null where the row needs a nominal and there is none.
 */
export function rowFigure(row: LimitRow, figures: WaveFigures, nominal: Nominal | null): RowFigure | null {
  const { unit, share, figure: figureOf } = limitQuantities[row.quantity];
  const { limit } = row;
  if ('highestOrder' in row) {
    const figure = figureOf(figures, row.highestOrder);
    const quantity = `${row.quantity} to order ${Math.min(row.highestOrder, figures.thdOrders)} (${row.unit})`;
    if (row.unit === '% of fundamental') return { quantity, unit: row.unit, figure, limit };
    return (
      nominal && {
        ...{ quantity, unit: row.unit },
        figure: percentOfNominal(figure, figures.fundamental, nominal.voltageV),
        limit,
      }
    );
  }
  const figure = figureOf(figures, figures.thdOrders);
  const quantity = `${row.quantity} (${unit})`;
  if (row.unit !== share?.unit) return { quantity, unit, figure, limit };
  return nominal && { quantity, unit, figure, limit: percentOf(nominal[share.of], limit) };
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
    ({ order, figure, max }) => ({
      ...{ quantity: `harmonic ${order} (${row.unit})`, unit: row.unit },
      ...{ figure, limit: { max } },
    }),
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
  if (nominal === null) return notJudgeable({ code: 'limit.noNominal' });
  return percentOfNominal(figure, fundamental, nominal.voltageV);
}
