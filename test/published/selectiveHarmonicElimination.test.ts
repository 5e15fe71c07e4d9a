import { describe, expect, test } from 'vitest';
import { scaledWave } from '../../src/synth/changedWaves.ts';
import type { KnownWave } from '../../src/synth/knownWave.ts';
import { staircase, threeLevelWave, twoLevelWave } from '../../src/synth/steppedWaves.ts';
import { fullDistortion } from './fullDistortion.ts';

/** Peak value of an order, with its sign: these waves are sums of sines without cosines. */
function peakOf({ truth }: KnownWave, order: number): number {
  const { rms, phaseRad } = truth.harmonic(order);
  return Math.SQRT2 * rms * Math.cos(phaseRad);
}

/** A staircase whose step, not whose peak, is 1. */
function steps(anglesDeg: readonly number[]): KnownWave {
  return scaledWave(staircase(anglesDeg), anglesDeg.length);
}

/**
 * How far angles rounded to 5e-6 degrees can leave a harmonic from zero: |dVn/da| ≤ (4/π) · rise per radian
 * and angle.
 */
function residue(angles: number, rise: number): number {
  return angles * rise * (4 / Math.PI) * ((5e-6 * Math.PI) / 180);
}

// Angles computed from the equations of the named works, which print them with two or three decimals. The
// fundamentals have the six decimals given, and the angles' rounding.
describe('orders vanish at the angles that eliminate them', () => {
  test.each<[string, KnownWave, number[], number, number]>([
    ['three-level pulse, 30 degrees', threeLevelWave([30]), [3, 9, 15], 1.102658, 0],
    ['three-level pulse, 18 degrees', threeLevelWave([18]), [5, 15], 1.210923, 0],
    ['three-level pulse, 90/7 degrees', threeLevelWave([90 / 7]), [7, 21], 1.241317, 0],
    [
      'two-level, two notches (H. S. Patel, R. G. Hoft 1973)',
      twoLevelWave([23.64494, 33.32768]),
      [3, 5],
      1.068232,
      residue(2, 2),
    ],
    [
      'two-level, two notches (Mohan, Undeland, Robbins 2003: 16.3 and 22.1 degrees, V1 1.188)',
      twoLevelWave([16.2472, 22.06855]),
      [5, 7],
      1.188369,
      residue(2, 2),
    ],
    [
      'two-level, four notches',
      twoLevelWave([10.54561, 16.09246, 30.90455, 32.86689]),
      [5, 7, 11, 13],
      1.170402,
      residue(4, 2),
    ],
    ['five-level staircase, 12 and 48 degrees', steps([12, 48]), [3, 5, 15, 25], 2.09738, 0],
    [
      'seven-level staircase, sum of cosines 2.4',
      steps([11.50424, 28.71693, 57.10605]),
      [5, 7],
      3.055775,
      residue(3, 1),
    ],
    [
      'seven-level staircase, sum of cosines 2.31',
      steps([12.284, 33.60555, 59.99819]),
      [5, 7],
      2.941183,
      residue(3, 1),
    ],
    [
      'eleven-level staircase, ma 0.8 (L. M. Tolbert, F. Z. Peng, T. G. Habetler 1999)',
      steps([6.56984, 18.94017, 27.18326, 45.13577, 62.24254]),
      [5, 7, 11, 13],
      5.092958,
      residue(5, 1),
    ],
    [
      'three-level, three angles without 3 and 5',
      threeLevelWave([31.42023, 54.56938, 69.22688]),
      [3, 5],
      0.8,
      residue(3, 1),
    ],
    [
      'three-level, three angles without 5 and 7',
      threeLevelWave([37.07135, 44.03531, 56.67794]),
      [5, 7],
      0.8,
      residue(3, 1),
    ],
  ])('%s', (_, wave, eliminated, fundamental, rounding) => {
    for (const order of eliminated) {
      expect(Math.abs(peakOf(wave, order)), `order ${order}`).toBeLessThan(rounding + 1e-13);
    }
    expect(Math.abs(peakOf(wave, 1) - fundamental)).toBeLessThan(0.5e-6 + rounding);
  });
});

test('the angles as printed leave little (values from memory)', () => {
  // Patel and Hoft's pair 23.62, 33.30 is printed 0.03 degrees off: up to 2 · 2 · (4/π) · 0.03° = 0.0027.
  const patelHoft = twoLevelWave([23.62, 33.3]);
  expect(Math.abs(peakOf(patelHoft, 3))).toBeLessThan(0.0027);
  expect(Math.abs(peakOf(patelHoft, 5))).toBeLessThan(0.0027);
  // Tolbert, Peng and Habetler round to 0.005 degrees: up to 5 · (4/π) · 0.005° = 0.0006.
  const tolbert = steps([6.57, 18.94, 27.18, 45.14, 62.24]);
  for (const order of [5, 7, 11, 13]) expect(Math.abs(peakOf(tolbert, order))).toBeLessThan(0.0006);
});

test('five-level staircase, 12 and 48 degrees: what is left (computed apart from this code)', () => {
  const wave = steps([12, 48]);
  expect(Math.abs(peakOf(wave, 7) - 0.185179)).toBeLessThan(0.6e-6);
  expect(Math.abs(peakOf(wave, 11) + 0.190671)).toBeLessThan(0.6e-6);
  expect(Math.abs(wave.truth.rms - 1.505545)).toBeLessThan(0.6e-6);
  expect(Math.abs(100 * fullDistortion(wave.truth) - 17.47479)).toBeLessThan(0.6e-5);
});

test('five-level staircase of 100 V sources at 20 and 40 degrees (Hart 2011, Example 8-6)', () => {
  // Printed 217, 0, −28.4, −10.8, 0 V and Mi 0.853 (values from memory); recomputed with more digits.
  const wave = scaledWave(steps([20, 40]), 100);
  [217.181, 0, -28.351, -10.775, 0].forEach((peak, i) => {
    expect(Math.abs(peakOf(wave, 2 * i + 1) - peak)).toBeLessThan(0.6e-3);
  });
  expect(Math.abs(peakOf(wave, 1) / (2 * 100 * (4 / Math.PI)) - 0.8529)).toBeLessThan(0.6e-4);
  expect(Math.abs(100 * fullDistortion(wave.truth) - 19.1028)).toBeLessThan(0.6e-4);
});

test('THD of the eleven-level staircase, all orders, and without triplens to 49', () => {
  const { truth } = steps([6.56984, 18.94017, 27.18326, 45.13577, 62.24254]);
  expect(Math.abs(100 * fullDistortion(truth) - 7.93)).toBeLessThan(0.6e-4);
  let squares = 0;
  for (let order = 5; order <= 49; order++) if (order % 3 !== 0) squares += truth.harmonic(order).rms ** 2;
  expect(Math.abs((100 * Math.sqrt(squares)) / truth.fundamentalRms - 4.5015)).toBeLessThan(0.6e-4);
});
