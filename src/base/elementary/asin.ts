import { atan2 } from './atan2.ts';

/**
 * The angle in radians, −π/2 to π/2, whose sine is given; the same on every engine.
 *
 * @returns NaN outside −1 to 1.
 */
export function asin(x: number): number {
  return atan2(x, Math.sqrt((1 - x) * (1 + x)));
}
