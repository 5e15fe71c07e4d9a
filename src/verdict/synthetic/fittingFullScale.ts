import { decimalExponent } from '../../base/elementary/decimalExponent.ts';
import { powerOfTen } from '../../base/elementary/powerOfTen.ts';
import type { WaveTruth } from '../../signal/synthesis/knownWave.ts';

/**
 * Half the screen of a scope set by hand: four divisions of the smallest 1-2-5 setting that holds the wave
 * and three times its noise.
 *
 * @returns volts, positive; 4 V for a wave of nothing.
 */
export function fittingFullScale({ peak, trough }: WaveTruth, noiseRmsV: number): number {
  const perDivision = (Math.max(peak, -trough) + 3 * noiseRmsV) / 4;
  if (perDivision === 0) return 4;
  const power = powerOfTen(decimalExponent(perDivision));
  return 4 * power * ([1, 2, 5].find((factor) => factor * power >= perDivision) ?? 10);
}
