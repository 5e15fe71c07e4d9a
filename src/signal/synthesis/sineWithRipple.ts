import { asin } from '../../base/elementary/asin.ts';
import { sin } from '../../base/elementary/sin.ts';
import { gaussLegendre } from './gaussLegendre.ts';
import { integral } from './integral.ts';
import type { KnownWave } from './knownWave.ts';
import { sineWithHarmonics } from './sineWithHarmonics.ts';
import { waveTruth } from './waveTruth.ts';

/**
 * A sine of peak 1 with switching ripple: one small fast sine that need not be a harmonic.
 *
 * @param order - the ripple's frequency over the fundamental's, above 1, not necessarily whole.
 * @param ratio - the ripple over the fundamental, 0 to below 1.
 * @remarks Where the order is not whole the wave never repeats: its truth is that of an endless record,
 * in which every phase of the ripple meets every phase of the sine. The peak is then that of the wave
 * itself, not of a mean cycle, from which such ripple averages away.
 */
export function sineWithRipple(order: number, ratio: number): KnownWave {
  if (!(order > 1 && ratio >= 0 && ratio < 1)) {
    throw new RangeError(`ripple must be faster and smaller than the wave: order ${order}, ratio ${ratio}`);
  }
  if (Number.isInteger(order)) return sineWithHarmonics([{ order, ratio, phaseRad: 0 }]);
  const rule = gaussLegendre(20);
  return {
    kind: 'pure sine',
    at: (phaseCycles) => sin(2 * Math.PI * phaseCycles) + ratio * sin(2 * Math.PI * order * phaseCycles),
    truth: waveTruth({
      rms: Math.sqrt((1 + ratio ** 2) / 2),
      mean: 0,
      peak: 1 + ratio,
      trough: -1 - ratio,
      meanAbsoluteAbout: (level) => {
        // The sine takes each value twice a cycle; 4000 panels keep the bend at |s| = ratio below 1e-8.
        const distance = (x: number): number => meanDistance(sin(Math.PI * x) - level, ratio);
        return integral(distance, -0.5, 0.5, 4000, rule);
      },
      harmonic: (n) => ({ rms: n === 1 ? Math.SQRT1_2 : 0, phaseRad: 0 }),
    }),
  };
}

/** Mean of |s + r sin θ| over θ. */
function meanDistance(s: number, r: number): number {
  if (Math.abs(s) >= r) return Math.abs(s);
  return (2 / Math.PI) * (s * asin(s / r) + Math.sqrt(r * r - s * s));
}
