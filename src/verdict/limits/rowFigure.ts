import type { Figure } from '../../base/figure.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { Limit, Nominal } from '../measureDocument.ts';
import type { LimitRow } from './limitTable.ts';
import { percentOfNominal } from './percentOfNominal.ts';
import { thdToOrder } from './thdToOrder.ts';

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
