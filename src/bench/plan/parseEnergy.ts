import type { MeasuredFigure } from '../../base/figure.ts';
import { MeasureError } from '../../base/measureError.ts';

const ENERGY = /^(\d+(?:[.,]\d+)?) ?(?:Wh)?(?: ?(?:±|\+\/?-) ?(\d+(?:[.,]\d+)?) ?(%|Wh)?)?$/i;

/**
 * An energy in Wh as a meter counted it: `466`, `466 Wh`, `466 ± 5`, `466 Wh ± 2 %`.
 *
 * @returns without a tolerance: as exact, for nobody said better.
 * @throws MeasureError `energy.grammar`, also for nothing.
 */
export function parseEnergy(text: string): MeasuredFigure {
  const [, digits = '', tolerance, unit] = ENERGY.exec(text.trim()) ?? [];
  const value = Number(digits.replace(',', '.'));
  if (!(value > 0)) {
    throw new MeasureError('energy.grammar', `"${text}" is no energy.`, {
      expected: 'watt-hours above zero, such as 466 or 466 ± 2 %',
      received: text,
    });
  }
  const half = Number(tolerance?.replace(',', '.') ?? 0);
  return { value, uncertainty: unit === '%' ? (value * half) / 100 : half };
}
