import { powerOfTen } from '../../base/elementary.ts';

/** Neighbouring readings looked at. */
const LOOKED = 20_000;
/**
 * A load that is switched, or climbs, shows its own levels and not the meter's step: fewer moves, or moves of fewer
 * sizes, tell none. What is many times the last digit printed takes more of them.
 */
const [LEAST_MOVES, LEAST_SIZES, LEAST_LARGE_SIZES] = [20, 3, 5];
const LARGE_DIGITS = 10;

/**
 * The smallest step between neighbouring readings: what the meter's display, or its converter, tells apart.
 *
 * @param decimals - digits behind the mark that the file prints, at most.
 * @returns in the numbers' own unit, positive; the last printed digit where too few readings differ to tell.
 */
export function readingStep(numbers: Float64Array, decimals: number): number {
  const printed = powerOfTen(-decimals);
  const stride = Math.max(1, Math.floor(numbers.length / LOOKED));
  let least = Number.POSITIVE_INFINITY;
  let moves = 0;
  const sizes = new Set<number>();
  for (let row = 1; row < numbers.length; row += stride) {
    const step = Math.abs(numbers[row]! - numbers[row - 1]!);
    // Half a printed digit is rounding of a double.
    if (!(step > printed / 2)) continue;
    moves++;
    if (sizes.size < LEAST_LARGE_SIZES) sizes.add(Math.round(step / printed));
    if (step < least) least = step;
  }
  const digits = Math.round(least / printed);
  const wanted = digits > LARGE_DIGITS ? LEAST_LARGE_SIZES : LEAST_SIZES;
  return moves < LEAST_MOVES || sizes.size < wanted ? printed : digits / powerOfTen(decimals);
}
