import type { Figure } from '../../base/figure.ts';
import type { Limit, Nominal } from '../measureDocument.ts';
import type { Outlet } from '../nominal/mainsNominals.ts';
import type { HarmonicRow, LimitRow, LimitTable } from './limitTable.ts';
import type { RowFigure } from './rowFigure.ts';

/**
 * The same figure and limit as they would stand if the outlet were meant for another voltage or frequency: what hangs on
 * the nominal goes with it, everything else stays.
 *
 * @param measured - against `nominal`.
 */
export function againstOutlet(
  measured: RowFigure,
  row: LimitRow | HarmonicRow,
  { appliesTo }: LimitTable,
  nominal: Nominal,
  other: Outlet,
): RowFigure {
  const volts = other.voltageV / nominal.voltageV;
  const hertz = other.frequencyHz / nominal.frequencyHz;
  const { quantity, figure, limit } = measured;
  if (row.unit === '% of nominal' && measured.quantity !== 'frequency (Hz)')
    return { quantity, limit, figure: times(figure, 1 / volts) };
  if (!('quantity' in row)) return measured;
  const isRelative = row.unit.startsWith('% of nominal');
  switch (row.quantity) {
    case 'RMS voltage':
    case 'peak voltage':
      // Volts that a table prints for its own class are the same share of it in another.
      return isRelative || appliesTo?.voltageV !== undefined
        ? { quantity, figure, limit: scaled(limit, volts) }
        : measured;
    case 'frequency':
      return isRelative || appliesTo?.frequencyHz !== undefined
        ? { quantity, figure, limit: scaled(limit, hertz) }
        : measured;
    default:
      return measured;
  }
}

function scaled({ min, max }: Limit, factor: number): Limit {
  return {
    ...(min === undefined ? {} : { min: min * factor }),
    ...(max === undefined ? {} : { max: max * factor }),
  };
}

function times(figure: Figure, factor: number): Figure {
  if (figure.value === null) return figure;
  return { value: figure.value * factor, uncertainty: figure.uncertainty * factor };
}
