/** π/2 in three parts: the first two short enough that a count of up to 2²⁶ times them is exact. */
const HALF_PI_HIGH = 1.570796325802803;
const HALF_PI_MIDDLE = 9.920935739593517e-10;
const HALF_PI_LOW = 5.721188726109832e-18;
const MOST = 2 ** 26;

/**
 * An angle as quarter turns and the rest.
 *
 * @param radians - finite.
 * @returns rest within ±π/4 of the quarter turns 0 to 3, each full turn left out.
 * @remarks Reduction by parts of π/2, after W. J. Cody and W. Waite, Software Manual for the Elementary Functions
 * (1980). Angles beyond 10⁸ are first brought down by the remainder of 2π as a double, which is off by less than the
 * spacing of doubles there.
 */
export function quarterTurns(radians: number): { readonly quarter: number; readonly rest: number } {
  const turns = Math.round(radians / (Math.PI / 2));
  if (Math.abs(turns) > MOST) return quarterTurns(radians % (2 * Math.PI));
  const rest = radians - turns * HALF_PI_HIGH - turns * HALF_PI_MIDDLE - turns * HALF_PI_LOW;
  return { quarter: turns & 3, rest };
}
