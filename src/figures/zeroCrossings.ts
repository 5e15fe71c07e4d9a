/**
 * Changes of sign in one cycle, with hysteresis so that noise and ringing at zero don't count.
 *
 * @param cycle - shape N, one cycle; its end joins its start. Not changed.
 * @param hysteresis - ≥ 0, in the unit of the cycle: how far past zero the wave must go.
 * @returns a whole number, even; 0 where the wave stays on one side.
 */
export function zeroCrossings(cycle: Float64Array, hysteresis: number): number {
  const side = (x: number): number => (x > hysteresis ? 1 : x < -hysteresis ? -1 : 0);
  const sides = Array.from(cycle, side).filter((s) => s !== 0);
  return sides.filter((s, i) => s !== sides.at(i - 1)).length;
}
