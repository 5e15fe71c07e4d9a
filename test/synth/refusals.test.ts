import { describe, expect, test } from 'vitest';
import { waveOfRms } from '../../src/synth/changedWaves.ts';
import { directCurrent } from '../../src/synth/polylineWave.ts';
import { clippedSine, sineWithHarmonics, sineWithRipple } from '../../src/synth/sines.ts';
import { sinusoidalPwm } from '../../src/synth/sinusoidalPwm.ts';
import { modifiedSine, nearestLevelAngles, staircase, threeLevelWave } from '../../src/synth/steppedWaves.ts';

describe('a shape that cannot be is a RangeError', () => {
  test.each<[string, () => unknown]>([
    ['clip above the peak', () => clippedSine(1.1)],
    ['clip at nothing', () => clippedSine(0)],
    ['duty of nothing', () => modifiedSine({ dutyRatio: 0 })],
    ['edges wider than the dwell', () => modifiedSine({ dutyRatio: 0.9, edgeCycles: 0.1 })],
    ['edges wider than the pulse', () => modifiedSine({ dutyRatio: 0.1, edgeCycles: 0.06 })],
    ['an even number of levels', () => nearestLevelAngles(4)],
    ['an order of a half', () => sineWithHarmonics([{ order: 2.5, ratio: 0.1, phaseRad: 0 }])],
    [
      'an order twice',
      () =>
        sineWithHarmonics([
          { order: 3, ratio: 0.1, phaseRad: 0 },
          { order: 3, ratio: 0.1, phaseRad: 0 },
        ]),
    ],
    ['ripple below the wave', () => sineWithRipple(0.5, 0.1)],
    ['ripple larger than the wave', () => sineWithRipple(100.5, 1)],
    ['an even carrier', () => sinusoidalPwm(20, 0.8)],
    ['overmodulation', () => sinusoidalPwm(21, 1.1)],
    ['no steps', () => staircase([])],
    ['a step past the crest', () => staircase([12, 95])],
    ['steps out of order', () => staircase([48, 12])],
    ['an even number of three-level angles', () => threeLevelWave([20, 40])],
    ['nothing, scaled', () => waveOfRms(directCurrent(0), 1)],
    ['nothing: crest factor', () => directCurrent(0).truth.crestFactor()],
    ['nothing: form factor', () => directCurrent(0).truth.formFactor()],
    ['direct current: THD', () => directCurrent(1).truth.thdRatio(50)],
  ])('%s', (_, make) => {
    expect(make).toThrow(RangeError);
  });
});
