import { describe, expect, test } from 'vitest';
import { sinusoidalPwm } from '../../src/synth/sinusoidalPwm.ts';
import { fullDistortion } from './fullDistortion.ts';

/**
 * N. Mohan, T. Undeland, W. Robbins, Power Electronics, 3rd ed., Wiley 2003, Table 8-1: peak of the order
 * m · mf ± n over Vd/2, for ma 0.2, 0.4, 0.6, 0.8, 1.0. The digits here are those of the theory behind the
 * table, (4/(mπ)) |Jn(m π ma/2)|; the book prints three, and they agree.
 */
const table: readonly (readonly [m: number, n: number, ...values: number[]])[] = [
  [1, 0, 1.242017, 1.150643, 1.005811, 0.818071, 0.600971],
  [1, 2, 0.015579, 0.06079, 0.131193, 0.219844, 0.31793],
  [1, 4, 0.000032, 0.000507, 0.002502, 0.007637, 0.01782],
  [2, 1, 0.190291, 0.326071, 0.370177, 0.314353, 0.181192],
  [2, 3, 0.003209, 0.023822, 0.070769, 0.139466, 0.212286],
  [2, 5, 0.000016, 0.000486, 0.003397, 0.012712, 0.033194],
  [3, 0, 0.33527, 0.123319, 0.083249, 0.170608, 0.112833],
  [3, 2, 0.043731, 0.138527, 0.203492, 0.176255, 0.062099],
  [3, 4, 0.000834, 0.01165, 0.046683, 0.104446, 0.157217],
  [3, 6, 0.000006, 0.000364, 0.003518, 0.01564, 0.043635],
  [4, 1, 0.163035, 0.157176, 0.007982, 0.105181, 0.067603],
  [4, 3, 0.011911, 0.069733, 0.132277, 0.114651, 0.009267],
  [4, 5, 0.000243, 0.006356, 0.033954, 0.08422, 0.118674],
  [4, 7, 0.000002, 0.000256, 0.003385, 0.017471, 0.050141],
];

describe.each([39, 75])('pulse-width modulation, mf %d', (carrierRatio) => {
  test.each([
    [0, 0.2],
    [1, 0.4],
    [2, 0.6],
    [3, 0.8],
    [4, 1],
  ])('column %d, ma %d', (column, modulationRatio) => {
    const { truth } = sinusoidalPwm(carrierRatio, modulationRatio);
    const peak = (order: number): number => Math.SQRT2 * truth.harmonic(order).rms;
    expect(Math.abs(peak(1) - modulationRatio)).toBeLessThan(1e-9);
    for (const [m, n, ...values] of table) {
      for (const order of [m * carrierRatio - n, m * carrierRatio + n]) {
        // The last digit given. The theory is that of large mf: at 39 the far side bands of the next group,
        // which fall on the same orders, are below it.
        expect(Math.abs(peak(order) - values[column]!), `order ${order}`).toBeLessThan(0.6e-6);
      }
    }
  });

  test('THD over all harmonics is √(2/ma² − 1)', () => {
    for (const modulationRatio of [0.6, 0.8, 1]) {
      const thd = fullDistortion(sinusoidalPwm(carrierRatio, modulationRatio).truth);
      expect(Math.abs(thd - Math.sqrt(2 / modulationRatio ** 2 - 1))).toBeLessThan(1e-8);
    }
  });
});

test('mf 21, ma 0.8', () => {
  const { truth } = sinusoidalPwm(21, 0.8);
  const expected = [0.8, 0.818071, 0.219844, 0.314353, 0.139466];
  [1, 21, 23, 43, 45].forEach((order, i) => {
    expect(Math.abs(Math.SQRT2 * truth.harmonic(order).rms - expected[i]!)).toBeLessThan(0.6e-6);
  });
});

test('Example 8-1 of the same book: 300 V, ma 0.8, mf 39, in V RMS', () => {
  // Printed 84.86, 23.33, 86.76, 23.33, 33.31, 33.31 (values from memory), from three printed digits;
  // computed from the theory with more: 84.853, 23.318, 86.770, 23.318, 33.342, 33.342.
  const { truth } = sinusoidalPwm(39, 0.8);
  const expected = [84.853, 23.318, 86.77, 23.318, 33.342, 33.342];
  [1, 37, 39, 41, 77, 79].forEach((order, i) => {
    expect(Math.abs(150 * truth.harmonic(order).rms - expected[i]!)).toBeLessThan(0.6e-3);
  });
});

test('Hart 2011, Example 8-8: 100 V, ma 0.8, mf 21, into 10 Ω and 20 mH at 60 Hz', () => {
  // Printed 6.39 A peak, 204 W, THD of the current 8.7 % (values from memory), the THD from the carrier and
  // its nearest side bands; recomputed so with more digits: 6.38777 A, 204.018 W, 8.6505 %.
  const { truth } = sinusoidalPwm(21, 0.8);
  const current = (order: number): number =>
    (100 * truth.harmonic(order).rms) / Math.hypot(10, 2 * Math.PI * 60 * 0.02 * order);
  expect(Math.abs(Math.SQRT2 * current(1) - 6.38777)).toBeLessThan(0.6e-5);
  expect(Math.abs(10 * current(1) ** 2 - 204.018)).toBeLessThan(0.6e-3);
  const thd = (100 * Math.hypot(current(19), current(21), current(23))) / current(1);
  expect(Math.abs(thd - 8.6505)).toBeLessThan(0.6e-4);
});
