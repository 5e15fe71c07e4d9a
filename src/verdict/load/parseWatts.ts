import { MeasureError } from '../../base/measureError.ts';

const WATTS = /^(\d+(?:[.,]\d+)?) ?(k?)W?$/i;

/**
 * A load in W: `300`, `300 W`, `1.2 kW`, `no load`.
 *
 * @throws MeasureError `load.grammar`.
 * @example parseWatts('1.2kW') // 1200
 */
export function parseWatts(text: string): number {
  if (/^no load$/i.test(text.trim())) return 0;
  const [match, digits = '', kilo = ''] = WATTS.exec(text.trim()) ?? [];
  if (match === undefined) {
    throw new MeasureError('load.grammar', `"${text}" is no load.`, {
      expected: 'watts, such as 0, 300 W or 1.2 kW',
      received: text,
      advice: 'Give the power of the load in W or kW.',
    });
  }
  // To a thousandth of a watt, so that 1.1 kW is 1100 W and not a rounding beside it.
  return Math.round(Number(digits.replace(',', '.')) * (kilo === '' ? 1e3 : 1e6)) / 1e3;
}
