import { expect, test } from 'vitest';
import { scaledWave } from '../../src/synth/changedWaves.ts';
import { polylineWave, triangleWave } from '../../src/synth/polylineWave.ts';
import { modifiedSine, squareWave } from '../../src/synth/steppedWaves.ts';
import { fullDistortion } from './fullDistortion.ts';

// The classical Fourier series, summed in closed form over all orders; to order 40 and 50 with high-precision
// arithmetic. Percent, to the last digit given.
const sawtooth = polylineWave('distorted sine', [
  { phaseCycles: 0, value: -1 },
  { phaseCycles: 1, value: 1 },
]);

test.each([
  ['square', squareWave(), Math.sqrt(Math.PI ** 2 / 8 - 1), 47.032239, 47.297133],
  [
    '120 degree quasi-square',
    modifiedSine({ dutyRatio: 2 / 3 }),
    Math.sqrt(Math.PI ** 2 / 9 - 1),
    29.679432,
    30.015291,
  ],
  ['triangle', triangleWave(), Math.sqrt(Math.PI ** 4 / 96 - 1), 12.114219, 12.114743],
])('THD of the %s', (_, { truth }, all, to40, to50) => {
  expect(Math.abs(fullDistortion(truth) - all)).toBeLessThan(1e-12);
  expect(Math.abs(100 * truth.thdRatio(40) - to40)).toBeLessThan(0.6e-6);
  expect(Math.abs(100 * truth.thdRatio(50) - to50)).toBeLessThan(0.6e-6);
});

test('THD of the sawtooth over all harmonics', () => {
  expect(Math.abs(fullDistortion(sawtooth.truth) - Math.sqrt(Math.PI ** 2 / 6 - 1))).toBeLessThan(1e-12);
});

test('distortion over the RMS instead of the fundamental', () => {
  const ofRms = (thd: number): number => (100 * thd) / Math.sqrt(1 + thd ** 2);
  expect(Math.abs(ofRms(fullDistortion(squareWave().truth)) - 43.5236)).toBeLessThan(0.6e-4);
  const sixStep = modifiedSine({ dutyRatio: 2 / 3 });
  expect(Math.abs(ofRms(fullDistortion(sixStep.truth)) - 29.6832)).toBeLessThan(0.6e-4);
});

test('square wave of 100 V (D. W. Hart, Power Electronics, 2011, Example 8-2)', () => {
  // Peak values of orders 1 to 9 as printed, one decimal (value from memory); recomputed: 127.324, 42.441,
  // 25.465, 18.189, 14.147. The book cuts 25.465, 18.189 and 14.147 in two ways: one unit of the last digit.
  const { truth } = scaledWave(squareWave(), 100);
  [127.3, 42.4, 25.5, 18.2, 14.1].forEach((printed, i) => {
    expect(Math.abs(Math.SQRT2 * truth.harmonic(2 * i + 1).rms - printed)).toBeLessThan(0.1);
  });
});

test('half bridge on 48 V (M. H. Rashid, Power Electronics, half-bridge example)', () => {
  // Printed: V1 21.6 V, THD 48.34 %, HF3 33.33 %, DF 3.804 %, DF3 3.704 % (values from memory, recomputed).
  const { truth } = scaledWave(squareWave(), 24);
  expect(Math.abs(truth.fundamentalRms - 21.6076)).toBeLessThan(0.6e-4);
  expect(Math.abs(100 * fullDistortion(truth) - 48.34258)).toBeLessThan(0.6e-5);
  expect(Math.abs((100 * truth.harmonic(3).rms) / truth.fundamentalRms - 33.3333)).toBeLessThan(0.6e-4);
  expect(Math.abs((100 * truth.harmonic(3).rms) / 9 / truth.fundamentalRms - 3.7037)).toBeLessThan(0.6e-4);
  let squares = 0;
  for (let order = 2; order < 2000; order++) squares += (truth.harmonic(order).rms / order ** 2) ** 2;
  // DF weighs order n by 1/n²: closed form √(π⁶/960 − 1). What lies past order 2000 is below 1e-10 of it.
  const distortionFactor = (100 * Math.sqrt(squares)) / truth.fundamentalRms;
  expect(Math.abs(distortionFactor - 100 * Math.sqrt(Math.PI ** 6 / 960 - 1))).toBeLessThan(1e-8);
  expect(Math.abs(distortionFactor - 3.804)).toBeLessThan(0.6e-3);
});
