import fc from 'fast-check';
import { expect, test } from 'vitest';
import { timeDecimals, valueDecimals } from '../../src/synth/layoutTexts.ts';

test('timeDecimals keeps the rounding under a thousandth of the interval, with at most one digit to spare', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1, noNaN: true }), (interval) => {
      const rounding = 0.5 * 10 ** -timeDecimals(interval);
      expect(rounding).toBeLessThan(1e-3 * interval);
      expect(rounding).toBeGreaterThan(1e-5 * interval);
    }),
  );
});

test('valueDecimals gives the largest value seven significant digits', () => {
  expect(valueDecimals(Float64Array.of(0.5, -169.7))).toBe(4);
  expect(valueDecimals(Float64Array.of(1))).toBe(6);
  expect(valueDecimals(Float64Array.of(0.0099))).toBe(9);
  expect(valueDecimals(Float64Array.of(12_345_678))).toBe(0);
  expect(valueDecimals(Float64Array.of(0, 0))).toBe(0);
});
