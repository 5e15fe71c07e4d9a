import { asin } from '../../base/elementary/asin.ts';

/**
 * Switching angles of nearest-level control: step i stands where a sine of peak k reaches i − 1/2.
 *
 * @param levels - odd, 3 and up: 2k + 1.
 * @returns k angles in degrees, ascending, in (0, 90).
 */
export function nearestLevelAngles(levels: number): readonly number[] {
  if (!(Number.isInteger(levels) && levels >= 3 && levels % 2 === 1)) {
    throw new RangeError(`levels must be odd and at least 3, not ${levels}`);
  }
  const k = (levels - 1) / 2;
  return Array.from({ length: k }, (_, i) => (asin((i + 0.5) / k) * 180) / Math.PI);
}
