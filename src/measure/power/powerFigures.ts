import type { Figure } from '../../base/figure.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import type { MeasureNotice } from '../notices.ts';
import { type NonsinusoidalPower, nonsinusoidalPower, type PowerBasis } from './nonsinusoidalPower.ts';

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
  readonly notices: readonly MeasureNotice[];
};

export interface PowerRatios {
  /** P / S, −1 to 1. */
  readonly powerFactor: number;
  /** P1 / S1 = cos θ1, −1 to 1. */
  readonly displacementPowerFactor: number;
  /** 100·SN / S1. */
  readonly harmonicPollutionPercent: number;
}

/**
 * What the powers come to beside each other.
 *
 * @throws RangeError where there is no fundamental to stand under the line.
 * @see IEEE Std 1459-2010, 3.1.2 (clause number from memory).
 */
export function powerRatios(basis: PowerBasis): PowerRatios {
  const powers = nonsinusoidalPower(basis);
  if (!(powers.fundamentalApparentVA > 0)) throw new RangeError('ratios of a power without a fundamental');
  // Taken in time, P may pass S by rounding.
  const powerFactor = Math.max(-1, Math.min(1, powers.activeW / powers.apparentVA));
  return {
    powerFactor,
    displacementPowerFactor: powers.fundamentalActiveW / powers.fundamentalApparentVA,
    harmonicPollutionPercent: (100 * powers.nonfundamentalApparentVA) / powers.fundamentalApparentVA,
  };
}

/** One channel's samples on an even time base. Any measured wave or wave input is one. */
export interface SampledChannel {
  /** Shape N, in U; NaN marks a missing sample. */
  readonly samples: Float64Array;
  readonly intervalS: number;
  /** Time of sample 0. */
  readonly startS: number;
  /** Digitiser step in U where it is known, else null. */
  readonly stepSize: number | null;
}

/** Samples and the harmonic series fitted to them. */
export interface FittedChannel {
  /** Shape N, in U; NaN marks a missing sample. */
  readonly samples: Float64Array;
  readonly fit: HarmonicFit;
}
