import type { Figure } from '../../base/figure.ts';
import type { Notice } from '../../base/notice.ts';
import type { NonsinusoidalPower } from './nonsinusoidalPower.ts';
import type { PowerRatios } from './powerRatios.ts';

/** One order of voltage and current together, in plain numbers. */
export interface HarmonicPower {
  /** 1 = the fundamental. */
  readonly order: number;
  /** Positive where it leaves the outlet. */
  readonly activeW: number;
  /** Positive where the current lags. */
  readonly reactiveVar: number;
}

/** Every power and ratio of powers, each with its uncertainty. */
export type PowerFigures = {
  readonly [Key in keyof NonsinusoidalPower | keyof PowerRatios]: Figure;
} & {
  /** θ1, positive for a current that lags, −180 to 180. A heater shows the skew here: θ1 / 360° periods. */
  readonly displacementDeg: Figure;
  /** The stretch measured, on the file's own time axis. */
  readonly spanS: readonly [number, number];
  readonly cyclesUsed: number;
  /** Orders 1 up, without a hole. */
  readonly harmonics: readonly HarmonicPower[];
  readonly notices: readonly Notice[];
};
