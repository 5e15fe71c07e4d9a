import { MeasureError } from '../../base/measureError.ts';
import type { ToldLoad } from '../sweep/toldLoad.ts';

const STATE = /^(\d+(?:[.,]\d+)?) ?(%|V)(?: ?DC)?$/i;

/**
 * The state of a battery: `80 %` charged, or `12.6 V` at its terminals.
 *
 * @throws MeasureError `battery.grammar`.
 */
export function parseBattery(text: string): NonNullable<ToldLoad['battery']> {
  const [, digits = '', unit = ''] = STATE.exec(text.trim()) ?? [];
  const value = Number(digits.replace(',', '.'));
  if (unit === '' || (unit === '%' && value > 100)) {
    throw new MeasureError('battery.grammar', `"${text}" is no state of a battery.`, {
      expected: 'a charge such as 80 %, or volts such as 12.6 V',
      received: text,
    });
  }
  return unit === '%' ? { percent: value } : { directV: value };
}
