import { describe, expect, test } from 'vitest';
import { clippedSine } from '../../../src/signal/synthesis/clippedSine.ts';
import { directCurrent } from '../../../src/signal/synthesis/directCurrent.ts';
import { modifiedSine } from '../../../src/signal/synthesis/modifiedSine.ts';
import { nearestLevelAngles } from '../../../src/signal/synthesis/nearestLevelAngles.ts';
import { sineWithHarmonics } from '../../../src/signal/synthesis/sineWithHarmonics.ts';
import { sineWithRipple } from '../../../src/signal/synthesis/sineWithRipple.ts';
import { sinusoidalPwm } from '../../../src/signal/synthesis/sinusoidalPwm.ts';
import { staircase } from '../../../src/signal/synthesis/staircase.ts';
import { threeLevelWave } from '../../../src/signal/synthesis/threeLevelWave.ts';
import { waveOfRms } from '../../../src/signal/synthesis/waveOfRms.ts';

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
