import { powerOfTen } from '../../base/elementary.ts';

/** Neighbouring readings looked at. */
const LOOKED = 20_000;

/**
 * The smallest step between neighbouring readings: what the meter's display, or its converter, tells apart.
 *
 * @param decimals - digits behind the mark that the file prints, at most.
 * @returns in the numbers' own unit, positive; the last printed digit where no reading differs from the one before.
 */
export function readingStep(numbers: Float64Array, decimals: number): number {
  const printed = powerOfTen(-decimals);
  const stride = Math.max(1, Math.floor(numbers.length / LOOKED));
  let least = Number.POSITIVE_INFINITY;
  for (let row = 1; row < numbers.length; row += stride) {
    const step = Math.abs(numbers[row]! - numbers[row - 1]!);
    // Half a printed digit is rounding of a double.
    if (step > printed / 2 && step < least) least = step;
  }
  return least === Number.POSITIVE_INFINITY ? printed : Math.round(least / printed) / powerOfTen(decimals);
}
