import type { KnownWave } from './knownWave.ts';
import { directCurrent, halfWave, triangleWave } from './polylineWave.ts';
import { clippedSine, type HarmonicPart, sineWave, sineWithHarmonics, sineWithRipple } from './sines.ts';
import { sinusoidalPwm } from './sinusoidalPwm.ts';
import {
  modifiedSine,
  nearestLevelAngles,
  squareWave,
  staircase,
  threeLevelWave,
  twoLevelWave,
} from './steppedWaves.ts';
import type { Ringing } from './withRinging.ts';

/** What the shapes can be told; each takes what concerns it. */
export interface ShapeOptions {
  /** Harmonics. Default: order 3 at 5 %. */
  readonly harmonics?: readonly HarmonicPart[] | undefined;
  /** Ripple. Default: 333.3 times the wave's frequency, 2 %. */
  readonly ripple?: { readonly order: number; readonly ratio: number } | undefined;
  /** Clipped: where, over the sine's own peak. Default 0.85. */
  readonly clipRatio?: number | undefined;
  /** Modified sine. Default 0.6. */
  readonly dutyRatio?: number | undefined;
  /** Edges, as a fraction of the period. Default 0. */
  readonly edgeCycles?: number | undefined;
  /** Modified sine, square. Default 0. */
  readonly tiltRatio?: number | undefined;
  /** Modified sine. Default none. */
  readonly ringing?: Ringing | undefined;
  /** Staircase with nearest-level angles: odd, 5 and up. Default 9. */
  readonly levels?: number | undefined;
  /** Staircase, two-level, three-level: switching angles of the first quarter. */
  readonly anglesDeg?: readonly number[] | undefined;
  /** Pulse-width modulation: carrier over wave frequency. Default 39. */
  readonly carrierRatio?: number | undefined;
  /** Pulse-width modulation. Default 0.8. */
  readonly modulationRatio?: number | undefined;
}

export type ShapeName =
  | 'sine'
  | 'harmonics'
  | 'ripple'
  | 'clipped'
  | 'triangle'
  | 'halfwave'
  | 'modified'
  | 'square'
  | 'staircase'
  | 'twolevel'
  | 'threelevel'
  | 'pwm'
  | 'dc'
  | 'noise';

/** The shapes by name, as a person at the command line asks for them. */
export const waveNamed: Readonly<Record<ShapeName, (options: ShapeOptions) => KnownWave>> = {
  sine: () => sineWave(),
  harmonics: ({ harmonics = [{ order: 3, ratio: 0.05, phaseRad: 0 }] }) => sineWithHarmonics(harmonics),
  ripple: ({ ripple = { order: 333.3, ratio: 0.02 } }) => sineWithRipple(ripple.order, ripple.ratio),
  clipped: ({ clipRatio = 0.85 }) => clippedSine(clipRatio),
  triangle: () => triangleWave(),
  halfwave: () => halfWave(),
  modified: ({ dutyRatio = 0.6, ...options }) => modifiedSine({ ...options, dutyRatio }),
  square: (options) => squareWave(options),
  staircase: ({ levels = 9, anglesDeg = nearestLevelAngles(levels), edgeCycles }) =>
    staircase(anglesDeg, edgeCycles),
  // Two-level angles that leave orders 5 and 7 out, three-level angles that leave 3 and 5 out.
  twolevel: ({ anglesDeg = [16.2472, 22.06855], edgeCycles }) => twoLevelWave(anglesDeg, edgeCycles),
  threelevel: ({ anglesDeg = [31.42023, 54.56938, 69.22688], edgeCycles }) =>
    threeLevelWave(anglesDeg, edgeCycles),
  pwm: ({ carrierRatio = 39, modulationRatio = 0.8 }) => sinusoidalPwm(carrierRatio, modulationRatio),
  dc: () => directCurrent(1),
  noise: () => directCurrent(0),
};
