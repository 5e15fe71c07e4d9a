import { expect, test } from 'vitest';
import { directDoubt } from '../../../src/judge/nominal/inferNominal.ts';

const volts = (value: number, uncertainty = 1) => ({ value, uncertainty });

test('a sine of codes counted from zero: 230 V on 461 V of DC', () => {
  expect(directDoubt(volts(461), volts(230))).toEqual([{ code: 'dc.large', meanV: 461, acRmsV: 230 }]);
});

test('DC of either sign, from a tenth of the RMS without DC on', () => {
  expect(directDoubt(volts(24.1), volts(230))).toHaveLength(1);
  expect(directDoubt(volts(-24.1), volts(230))).toHaveLength(1);
  expect(directDoubt(volts(23.9), volts(230))).toEqual([]);
});

test('nothing where the mean is that unsure, or not known', () => {
  expect(directDoubt(volts(30, 8), volts(230))).toEqual([]);
  const missing = { value: null, reason: 'the channel was AC-coupled' };
  expect(directDoubt(missing, volts(230))).toEqual([]);
  expect(directDoubt(volts(30), missing)).toEqual([]);
});
