import { expect, test } from 'vitest';
import { halfWave, triangleWave } from '../../src/synth/polylineWave.ts';
import { clippedSine, sineWave, sineWithHarmonics } from '../../src/synth/sines.ts';
import { squareWave, staircase } from '../../src/synth/steppedWaves.ts';
import { averageRespondingError } from './averageRespondingError.ts';

// Crest factor, form factor, and the error of an average-responding meter in percent. The first three rows
// are handbook values (1.414/1.11, 1/1, 1.732/1.155; +11 % and −4 %); all computed apart from this code.
test.each([
  ['sine', sineWave(), Math.SQRT2, 1.110721, 0],
  ['square', squareWave(), 1, 1, 11.0721],
  ['triangle', triangleWave(), 1.732051, 1.154701, -3.8088],
  ['half-wave rectified sine', halfWave(), 2, 1.570796, -29.2893],
  ['trapezoid with ramps of 30 degrees', squareWave({ edgeCycles: 60 / 360 }), 1.133893, 1.058301, 4.9532],
  ['trapezoid with ramps of 60 degrees', squareWave({ edgeCycles: 120 / 360 }), 1.341641, 1.118034, -0.6541],
  ['sine clipped at 0.8 of its peak', clippedSine(0.8), 1.257755, 1.092162, 1.6992],
  [
    'sine + 10 % third in phase (flat-topped)',
    sineWithHarmonics([{ order: 3, ratio: 0.1, phaseRad: 0 }]),
    1.266476,
    1.080252,
    2.8205,
  ],
  [
    'sine − 10 % third (peaky)',
    sineWithHarmonics([{ order: 3, ratio: 0.1, phaseRad: Math.PI }]),
    1.547915,
    1.154752,
    -3.8131,
  ],
])('%s', (_, { truth }, crestFactor, formFactor, meterErrorPercent) => {
  // Each to the last digit given.
  expect(Math.abs(truth.crestFactor() - crestFactor)).toBeLessThan(0.6e-6);
  expect(Math.abs(truth.formFactor() - formFactor)).toBeLessThan(0.6e-6);
  expect(Math.abs(100 * averageRespondingError(truth) - meterErrorPercent)).toBeLessThan(0.6e-4);
});

test('five levels at 12 and 48 degrees, by hand', () => {
  // In a quarter of 90 degrees: 36 at one step, 42 at two. Mean square (36 + 4 · 42)/90 = 34/15, mean 4/3.
  const { truth } = staircase([12, 48]);
  const rms = Math.sqrt(34 / 15);
  const meter = (Math.PI / (2 * Math.SQRT2)) * (4 / 3);
  expect(Math.abs(truth.crestFactor() - 2 / rms)).toBeLessThan(1e-13);
  expect(Math.abs(truth.formFactor() - rms / (4 / 3))).toBeLessThan(1e-13);
  expect(Math.abs(averageRespondingError(truth) - (meter / rms - 1))).toBeLessThan(1e-13);
});
