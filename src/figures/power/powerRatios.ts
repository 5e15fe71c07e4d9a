import { nonsinusoidalPower } from './nonsinusoidalPower.ts';
import type { PowerBasis } from './powerBasis.ts';

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
