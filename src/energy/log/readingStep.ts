import { powerOfTen } from '../../base/elementary.ts';

/** Neighbouring readings looked at. */
const LOOKED = 20_000;
/** A load that is switched between a few levels shows those, not the meter's step: fewer moves, or sizes, tell none. */
const [LEAST_MOVES, LEAST_SIZES] = [20, 3];

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
    if (numbers[row] !== 0 && sizes.size < LEAST_SIZES) sizes.add(numbers[row]!);
    if (step < least) least = step;
  }
  return moves < LEAST_MOVES || sizes.size < LEAST_SIZES
    ? printed
    : Math.round(least / printed) / powerOfTen(decimals);
}
