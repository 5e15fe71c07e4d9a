import type { Rescaling } from '../../read/rescaleCapture.ts';
import { assayError } from '../assayErrors.ts';
import type { DirectInputChannels } from '../directInput.ts';
import type { Wanted } from './option.ts';

export const aboveZero: Wanted = { words: 'A number above zero', isRight: (value) => value > 0 };
export const notNegative: Wanted = { words: 'A number, zero or more', isRight: (value) => value >= 0 };
export const notZero: Wanted = { words: 'A number other than zero', isRight: (value) => value !== 0 };

export function wholeNumber(least: number, most: number): Wanted {
  return {
    words: `A whole number from ${least} to ${most}`,
    isRight: (value) => Number.isInteger(value) && value >= least && value <= most,
  };
}

/** A number as the command takes it. @throws MeasureError `option.refused`. */
export function finiteNumber(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw assayError('option.refused.number', {});
  return value;
}

/** The same, as an option wants it. @throws MeasureError `option.refused`. */
export function numberOf({ words, isRight }: Wanted): (text: string) => number {
  return (text) => {
    const value = finiteNumber(text);
    if (!isRight(value)) throw assayError('option.refused', { wanted: words });
    return value;
  };
}

/** Beyond any rate, voltage or share. */
const LARGEST = 1e15;

export function positive(text: string): number {
  const value = numberOf(aboveZero)(text);
  if (value > LARGEST) throw assayError('option.refused.large', { most: LARGEST });
  return value;
}

/** `200`, or `CH1=200`. @throws MeasureError `option.refused`. */
export function scaleIn(text: string): Rescaling['scales'][number] {
  const at = text.lastIndexOf('=');
  const factor = finiteNumber(text.slice(at + 1));
  if (factor === 0) throw assayError('option.refused.noScale', {});
  return { channel: at < 0 ? null : text.slice(0, at), factor };
}

/** `CH2=4e-6`. @throws MeasureError `option.refused`. */
export function skewIn(text: string): { readonly channel: string; readonly seconds: number } {
  const at = text.lastIndexOf('=');
  if (at <= 0) throw assayError('option.refused.skew', {});
  return { channel: text.slice(0, at), seconds: finiteNumber(text.slice(at + 1)) };
}

/** `CH3,CH4`. @throws MeasureError `option.refused`. */
export function directInputIn(text: string): DirectInputChannels {
  const [voltage, current, ...more] = text.split(',').map((name) => name.trim());
  if (!voltage || !current || more.length > 0) throw assayError('option.refused.directInput', {});
  return { voltage, current };
}
