import { decimalExponent } from '../../base/elementary/decimalExponent.ts';

/** Divisions of a screen's height, and that the converter's range is the screen. Common practice, no source. */
export const ASSUMED_DIVISIONS = 8;
/** Of the screen that a wave may fill. */
const HIGHEST_FILL = 0.9;

/**
 * The finest setting of the row 1, 2, 5, 10 … a division at which a wave fills no more than 90 % of the screen.
 *
 * @param span - peak to peak, > 0.
 * @returns in the unit of the span a division.
 * @remarks The row's steps are up to 2.5 wide, so that the wave may fill as little as 36 %.
 * @example finestScale(650) // 100: 81 % of 8 divisions
 */
export function finestScale(span: number): number {
  return scaleAtLeast(span / (HIGHEST_FILL * ASSUMED_DIVISIONS));
}

/** The smallest setting of the row that is not below `value`. */
export function scaleAtLeast(value: number): number {
  const exponent = decimalExponent(value);
  for (const mantissa of [1, 2, 5, 10]) {
    const scale = Number(`${mantissa}e${exponent}`);
    // A value that stands on the row but for rounding is that setting.
    if (scale >= value * (1 - 1e-9)) return scale;
  }
  return Number(`1e${exponent + 1}`);
}
