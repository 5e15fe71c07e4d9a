import { expect, test } from 'vitest';
import { modifiedSine } from '../../src/synth/steppedWaves.ts';
import { averageRespondingError } from './averageRespondingError.ts';
import { fullDistortion } from './fullDistortion.ts';
import { quasiSquareTable } from './quasiSquareTable.ts';

test.each(quasiSquareTable)('quasi-square wave, zero step of twice %d degrees', (alphaDeg, ...row) => {
  const [duty, rms, fundamentalRms, thd, thd40, crestFactor, meterError] = row;
  const { truth } = modifiedSine({ dutyRatio: 1 - alphaDeg / 90 });
  // Each to the last digit given.
  expect(Math.abs(1 - alphaDeg / 90 - duty)).toBeLessThan(0.6e-6);
  expect(Math.abs(truth.rms - rms)).toBeLessThan(0.6e-6);
  expect(Math.abs(truth.fundamentalRms - fundamentalRms)).toBeLessThan(0.6e-6);
  expect(Math.abs(100 * fullDistortion(truth) - thd)).toBeLessThan(0.6e-5);
  expect(Math.abs(100 * truth.thdRatio(40) - thd40)).toBeLessThan(0.6e-5);
  expect(Math.abs(truth.crestFactor() - crestFactor)).toBeLessThan(0.6e-6);
  expect(Math.abs(truth.formFactor() - crestFactor)).toBeLessThan(0.6e-6);
  expect(Math.abs(100 * averageRespondingError(truth) - meterError)).toBeLessThan(0.6e-4);
});

test('an average-responding meter is right at duty 8/π²', () => {
  const { truth } = modifiedSine({ dutyRatio: 8 / Math.PI ** 2 });
  expect(Math.abs(averageRespondingError(truth))).toBeLessThan(1e-12);
});

test('no duty gives less THD than the one at 23.218263 degrees', () => {
  const thd = (alphaDeg: number): number =>
    fullDistortion(modifiedSine({ dutyRatio: 1 - alphaDeg / 90 }).truth);
  const least = thd(23.218263);
  for (const alphaDeg of [0, 10, 20, 23, 23.2, 23.24, 23.5, 30, 45]) {
    expect(thd(alphaDeg)).toBeGreaterThan(least);
  }
});
