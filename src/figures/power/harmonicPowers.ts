import type { HarmonicSeries } from '../../signal/harmonicSeries.ts';
import type { HarmonicPower } from './powerFigures.ts';

/**
 * Active and reactive power of each order: Pk = Vk·Ik·cos θk, Qk = Vk·Ik·sin θk.
 *
 * @param voltage - K orders.
 * @param current - K orders at the same frequency.
 */
export function harmonicPowers(voltage: HarmonicSeries, current: HarmonicSeries): HarmonicPower[] {
  return Array.from(voltage.cosine, (cosine, k) => {
    const sine = voltage.sine[k]!;
    return {
      order: k + 1,
      activeW: (cosine * current.cosine[k]! + sine * current.sine[k]!) / 2,
      reactiveVar: (cosine * current.sine[k]! - sine * current.cosine[k]!) / 2,
    };
  });
}
