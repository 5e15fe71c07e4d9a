import type { KnownWave } from '../../src/synth/knownWave.ts';
import { directCurrent, halfWave, triangleWave } from '../../src/synth/polylineWave.ts';
import { clippedSine, sineWave, sineWithHarmonics, sineWithRipple } from '../../src/synth/sines.ts';
import { sinusoidalPwm } from '../../src/synth/sinusoidalPwm.ts';
import {
  modifiedSine,
  nearestLevelAngles,
  squareWave,
  staircase,
  threeLevelWave,
  twoLevelWave,
} from '../../src/synth/steppedWaves.ts';

/** Every shape that repeats each cycle, plain and with its options, each with a name for the test's title. */
export const shapes: readonly (readonly [string, KnownWave])[] = [
  ['sine', sineWave()],
  [
    'sine with harmonics',
    sineWithHarmonics([
      { order: 2, ratio: 0.03, phaseRad: 1 },
      { order: 3, ratio: 0.1, phaseRad: -2 },
      { order: 7, ratio: 0.05, phaseRad: 4 },
    ]),
  ],
  ['sine with harmonic ripple', sineWithRipple(41, 0.02)],
  ['clipped sine', clippedSine(0.8)],
  ['half wave', halfWave()],
  ['triangle', triangleWave()],
  ['square', squareWave()],
  ['square, slow edges and tilt', squareWave({ edgeCycles: 0.01, tiltRatio: 0.12 })],
  ['modified sine', modifiedSine({ dutyRatio: 0.6 })],
  ['modified sine, slow edges and tilt', modifiedSine({ dutyRatio: 0.6, edgeCycles: 0.01, tiltRatio: 0.12 })],
  [
    'modified sine, ringing',
    modifiedSine({
      dutyRatio: 0.7,
      edgeCycles: 0.005,
      tiltRatio: 0.05,
      ringing: { ratio: 0.2, order: 47.3, decayCycles: 0.03 },
    }),
  ],
  ['staircase of 5', staircase([12, 48])],
  ['staircase of 17, slow edges', staircase(nearestLevelAngles(17), 0.003)],
  ['two-level', twoLevelWave([16.247, 22.068])],
  ['three-level', threeLevelWave([37.07135, 44.03531, 56.67794])],
  ['pulse-width modulation', sinusoidalPwm(21, 0.8)],
  ['direct current', directCurrent(-2)],
];
