import { energyError } from '../energyErrors.ts';

/**
 * What a unit is rated at, from its text: `380Wh`, `0.38 kWh`, `380`; `100Ah`.
 *
 * @returns in the unit, > 0.
 * @throws MeasureError `rating.grammar`.
 */
export function parseRating(text: string, unit: 'Wh' | 'Ah'): number {
  const plain = text.replaceAll(/\s+/g, '');
  const [, digits, scale = ''] =
    new RegExp(`^(\\d+(?:[.,]\\d+)?)(?:([km]?)${unit})?$`, 'i').exec(plain) ?? [];
  const factor = { k: 1000, m: 0.001 }[scale.toLowerCase()] ?? 1;
  const value = digits === undefined ? 0 : Number(digits.replace(',', '.')) * factor;
  if (!(value > 0)) throw energyError('rating.grammar', { text, unit });
  return value;
}
