import { expect, test } from 'vitest';
import { amountText } from '../../src/base/amountText.ts';

test.each([
  [1e8, 'S/s', '100 MS/s'],
  [2e-5, 's', '20 µs'],
  [1.05e6, 'Hz', '1.05 MHz'],
  [999.96, 'Hz', '1 kHz'],
  [48_600, 'Hz', '48.6 kHz'],
  [0.0333, 's', '33.3 ms'],
  [-1.6e-6, 's', '-1.6 µs'],
  [2.5e9, 'S/s', '2.5 GS/s'],
  [5, 'S/s', '5 S/s'],
  [0, 's', '0 s'],
  [1e-9, 's', '1 ns'],
])('amountText(%s, %s) is "%s"', (value, unit, text) => {
  expect(amountText(value, unit)).toBe(text);
});
