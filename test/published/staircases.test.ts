import { describe, expect, test } from 'vitest';
import { nearestLevelAngles, staircase } from '../../src/synth/steppedWaves.ts';
import { fullDistortion } from './fullDistortion.ts';

/**
 * Staircases of equal steps: the least THD over all orders and the angles that give it, and the THD with
 * nearest-level angles; minimised and summed with an independent numerical library. The minima 28.96, 16.42,
 * 11.53, 8.90 and 7.26 % stand so in the literature on best switching angles (F. L. Luo, H. Ye; values from
 * memory).
 */
const table: readonly (readonly [levels: number, thd: number, angles: number[], nearest: number])[] = [
  [3, 28.96357, [23.2183], 31.08419],
  [5, 16.42128, [12.8444, 41.8291], 17.60121],
  [7, 11.5301, [8.8829, 27.5969, 50.541], 12.22729],
  [9, 8.9023, [6.7878, 20.7677, 36.2255, 55.8276], 9.36367],
  [11, 7.2572, [5.4916, 16.6844, 28.5874, 42.0592, 59.4625], 7.58725],
  [13, 6.1288, [4.6106, 13.9544, 23.698, 34.2414, 46.3398, 62.1549], 6.37812],
  [15, 5.30606, [3.9729, 11.9967, 20.2688, 29.0121, 38.5768, 49.6526, 64.2506], 5.50202],
];

describe.each(table)('staircase of %d levels', (levels, thd, anglesDeg, nearest) => {
  test('least THD, at the best angles', () => {
    // At a minimum the four decimals of the angles change the THD in the ninth digit only.
    expect(Math.abs(100 * fullDistortion(staircase(anglesDeg).truth) - thd)).toBeLessThan(0.6e-5);
  });

  test('every other angle gives more', () => {
    const least = fullDistortion(staircase(anglesDeg).truth);
    anglesDeg.forEach((_, i) => {
      for (const shift of [-0.1, 0.1]) {
        const moved = anglesDeg.map((angle, j) => (i === j ? angle + shift : angle));
        expect(fullDistortion(staircase(moved).truth)).toBeGreaterThan(least);
      }
    });
  });

  test('THD with nearest-level angles', () => {
    const { truth } = staircase(nearestLevelAngles(levels));
    expect(Math.abs(100 * fullDistortion(truth) - nearest)).toBeLessThan(0.6e-5);
  });

  test('RMS and harmonics by their sums over the angles', () => {
    const { truth } = staircase(anglesDeg);
    const k = anglesDeg.length;
    const radians = [...anglesDeg.map((angle) => (angle * Math.PI) / 180), Math.PI / 2];
    const squares = anglesDeg.reduce((sum, _, i) => sum + (i + 1) ** 2 * (radians[i + 1]! - radians[i]!), 0);
    expect(Math.abs(truth.rms ** 2 - ((2 / Math.PI) * squares) / k ** 2)).toBeLessThan(1e-13);
    for (const n of [1, 3, 5, 7, 49]) {
      const cosines = radians.slice(0, k).reduce((sum, angle) => sum + Math.cos(n * angle), 0);
      const peak = (4 / (n * Math.PI * k)) * cosines;
      // rms · √2 · sin(nx + φ) with φ = 0 or π: the sign of the peak.
      const { rms, phaseRad } = truth.harmonic(n);
      expect(Math.abs(Math.SQRT2 * rms * Math.cos(phaseRad) - peak)).toBeLessThan(1e-13);
    }
  });
});
