import { describe, expect, test } from 'vitest';
import type { KnownWave } from '../../src/synth/knownWave.ts';
import { halfWave, triangleWave } from '../../src/synth/polylineWave.ts';
import { clippedSine, sineWave, sineWithHarmonics } from '../../src/synth/sines.ts';
import { sinusoidalPwm } from '../../src/synth/sinusoidalPwm.ts';
import {
  modifiedSine,
  nearestLevelAngles,
  squareWave,
  staircase,
  threeLevelWave,
  twoLevelWave,
} from '../../src/synth/steppedWaves.ts';
import { measured, numberIn, records } from './measured.ts';
import { quasiSquareTable } from './quasiSquareTable.ts';

/** The waves whose truths the other tests of this folder hold against published tables. */
const edged: readonly (readonly [string, KnownWave])[] = [
  ...quasiSquareTable.map(
    ([alphaDeg]) =>
      [`quasi-square, ${alphaDeg} degrees`, modifiedSine({ dutyRatio: 1 - alphaDeg / 90 })] as const,
  ),
  ...[3, 5, 7, 9, 11, 13, 15, 17].map(
    (levels) => [`staircase of ${levels} levels`, staircase(nearestLevelAngles(levels))] as const,
  ),
  ['square', squareWave()],
  ['two-level without 5 and 7', twoLevelWave([16.2472, 22.06855])],
  ['three-level without 3 and 5', threeLevelWave([31.42023, 54.56938, 69.22688])],
  ['staircase without 3 and 5', staircase([12, 48])],
];

const smooth: readonly (readonly [string, KnownWave])[] = [
  ['sine', sineWave()],
  ['triangle', triangleWave()],
  ['half wave', halfWave()],
  ['trapezoid with ramps of 30 degrees', squareWave({ edgeCycles: 60 / 360 })],
  ['trapezoid with ramps of 60 degrees', squareWave({ edgeCycles: 120 / 360 })],
  ['sine clipped at 0.8', clippedSine(0.8)],
  ['sine + 10 % third', sineWithHarmonics([{ order: 3, ratio: 0.1, phaseRad: 0 }])],
  ['sine − 10 % third', sineWithHarmonics([{ order: 3, ratio: 0.1, phaseRad: Math.PI }])],
];

// What the tool promises of its method on records without noise: jumps sampled at 100 kS/s stand anywhere
// between two samples, which leaves more doubt than a wave without jumps.
describe.each(records)('measured at $frequencyHz Hz over $cycles cycles', (record) => {
  describe.each([
    ...edged.map((row) => [...row, 5e-4, 0.1] as const),
    ...smooth.map((row) => [...row, 1e-4, 0.02] as const),
  ])('%s', (_, wave, rmsTolerance, thdTolerance) => {
    const figures = measured(wave, record);
    const { truth } = wave;

    test('frequency, RMS, THD', () => {
      expect(Math.abs(numberIn(figures.frequencyHz) - record.frequencyHz)).toBeLessThan(0.02);
      expect(Math.abs(numberIn(figures.rms) / 120 - 1)).toBeLessThan(rmsTolerance);
      expect(figures.thdOrders).toBe(50);
      expect(Math.abs(numberIn(figures.thdPercent) - 100 * truth.thdRatio(50))).toBeLessThan(thdTolerance);
    });

    test('form factor, and what an average-responding meter shows', () => {
      // RMS over mean of |v|. Where the mean misses an edge by part of a sample the RMS does too, the other
      // way by half: at most three times its tolerance.
      expect(Math.abs(numberIn(figures.formFactor) / truth.formFactor() - 1)).toBeLessThan(3 * rmsTolerance);
      const unit = 120 / truth.rms;
      const alternating = truth.meanAbsoluteAbout(truth.mean) * unit;
      const reading = (Math.PI / (2 * Math.SQRT2)) * alternating;
      expect(Math.abs(numberIn(figures.averageResponding) / reading - 1)).toBeLessThan(3 * rmsTolerance);
    });
  });
});

// Waves of many jumps are recorded faster: at 100 kS/s each of up to 78 jumps a cycle lies up to half a sample
// beside its place, which alone moves single orders by 0.1 % of the fundamental.
const fast = { ...records[0], sampleRateHz: 500_000 };

test.each<[string, KnownWave, number[]]>([
  ['three-level pulse, 30 degrees', threeLevelWave([30]), [3, 9, 15]],
  ['two-level, two notches', twoLevelWave([16.2472, 22.06855]), [5, 7]],
  ['two-level, four notches', twoLevelWave([10.54561, 16.09246, 30.90455, 32.86689]), [5, 7, 11, 13]],
  ['staircase, 12 and 48 degrees', staircase([12, 48]), [3, 5, 15, 25]],
  ['eleven-level staircase', staircase([6.56984, 18.94017, 27.18326, 45.13577, 62.24254]), [5, 7, 11, 13]],
])('orders eliminated stay away when measured: %s', (_, wave, eliminated) => {
  const { harmonics } = measured(wave, fast);
  // The tolerance of the THD, for each order alone.
  for (const order of eliminated) expect(harmonics[order - 1]!.percent, `order ${order}`).toBeLessThan(0.1);
});

test('pulse-width modulation measured: the carrier and its nearest side bands (Mohan et al. 2003, Table 8-1)', () => {
  // ma 0.8, with the mf of Hart 2011, Example 8-8: 21. Peaks over Vd/2, as percent of the fundamental, within
  // the THD's tolerance. The book prints three digits; these are of the theory behind them.
  const wave = sinusoidalPwm(21, 0.8);
  const figures = measured(wave, fast);
  expect(Math.abs(numberIn(figures.frequencyHz) - fast.frequencyHz)).toBeLessThan(0.02);
  expect(Math.abs(numberIn(figures.rms) / 120 - 1)).toBeLessThan(5e-4);
  expect(Math.abs(numberIn(figures.thdPercent) - 100 * wave.truth.thdRatio(50))).toBeLessThan(0.1);
  for (const [order, peak] of [
    [17, 0.007637],
    [19, 0.219844],
    [21, 0.818071],
    [23, 0.219844],
    [25, 0.007637],
  ] as const) {
    const { percent } = figures.harmonics[order - 1]!;
    expect(Math.abs(percent - (100 * peak) / 0.8), `order ${order}`).toBeLessThan(0.1);
  }
});
