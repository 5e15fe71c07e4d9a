import { MeasureError } from '../../base/measureError.ts';
import type { ToldNominal } from './mainsNominals.ts';

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)\s*`;
const VOLT = String.raw`V(?:\s*AC)?\s*`;
const BOTH = new RegExp(`^${NUMBER}(?:${VOLT}/?|/)\\s*${NUMBER}(?:Hz)?$`, 'i');
const VOLTAGE_ALONE = new RegExp(`^${NUMBER}${VOLT}/?$`, 'i');
const FREQUENCY_ALONE = new RegExp(`^/?\\s*${NUMBER}Hz$`, 'i');

/**
 * The nominal voltage and frequency from text: `120V/60Hz`, `230 V 50 Hz`, `120/60`, or one half with its
 * unit. Decimal point or comma.
 *
 * @throws MeasureError `nominal.grammar` when the text is anything else, or a number in it is zero.
 * @example parseNominal('120V') // { voltageV: 120 }
 */
export function parseNominal(text: string): ToldNominal {
  const trimmed = text.trim();
  const both = BOTH.exec(trimmed);
  if (both) return { voltageV: positive(both[1], text), frequencyHz: positive(both[2], text) };
  const voltage = VOLTAGE_ALONE.exec(trimmed);
  if (voltage) return { voltageV: positive(voltage[1], text) };
  const frequency = FREQUENCY_ALONE.exec(trimmed);
  if (frequency) return { frequencyHz: positive(frequency[1], text) };
  throw grammarError(text);
}

function positive(digits: string | undefined, text: string): number {
  const value = Number(digits?.replace(',', '.'));
  if (!(value > 0)) throw grammarError(text);
  return value;
}

function grammarError(text: string): MeasureError {
  return new MeasureError('nominal.grammar', `"${text}" is not a nominal voltage and frequency.`, {
    expected: 'volts and hertz, or one of them with its unit',
    received: text,
    advice: 'Write for example 120V/60Hz, 230 V 50 Hz, 120V or 60Hz.',
  });
}
