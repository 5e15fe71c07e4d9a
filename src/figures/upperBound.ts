import { hypot } from '../base/elementary/hypot.ts';
import type { Order } from './ordersOf.ts';

/**
 * What the root of a sum of squares may be at most, at about 97.7 % one-sided: noise taken off, two of the
 * sum's own deviations put on, then rounding and the scope's distortion.
 */
export function upperBound(
  orders: readonly Pick<Order, 'percent' | 'noisePercent' | 'roundingPercent'>[],
  distortionPercent: number,
): number {
  let [power, noisePower, variance, rounding] = [0, 0, 0, 0];
  for (const { percent, noisePercent, roundingPercent } of orders) {
    power += percent ** 2;
    noisePower += 2 * noisePercent ** 2;
    variance += 4 * (noisePercent ** 2) ** 2 + 4 * percent ** 2 * noisePercent ** 2;
    rounding += roundingPercent ** 2;
  }
  const truth = Math.sqrt(Math.max(0, power - noisePower) + 2 * Math.sqrt(variance));
  return truth + hypot(2 * Math.sqrt(rounding), distortionPercent);
}
