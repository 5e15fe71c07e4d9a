import type { ZeroTrack } from './zeroTrack.ts';

/**
 * Where a phase is a whole number of half turns, on the straight lines between the positions it is known at.
 *
 * @param at - positions, ascending; shape M, M ≥ 2.
 * @param halfTurns - phases at them, ascending.
 * @param seen - 1 where the phase is seen there, 0 where it is carried on.
 * @param length - of the record, in samples.
 * @returns from an even turn at the last zero or two before the record to the first zero after it.
 */
export function wholeHalfTurns(
  at: Float64Array,
  halfTurns: Float64Array,
  seen: Uint8Array,
  length: number,
): ZeroTrack {
  const crossings: number[] = [];
  const shown: number[] = [];
  const last = at.length - 2;
  let m = 0;
  for (let turn = 2 * Math.floor(halfTurns[0]! / 2) - 2; (crossings.at(-1) ?? 0) < length; turn++) {
    while (m < last && halfTurns[m + 1]! < turn) m++;
    const share = (turn - halfTurns[m]!) / (halfTurns[m + 1]! - halfTurns[m]!);
    crossings.push(at[m]! + share * (at[m + 1]! - at[m]!));
    shown.push(seen[m]! & seen[m + 1]!);
  }
  const early = crossings.filter((position) => position < 0).length;
  const from = 2 * Math.floor(Math.max(0, early - 1) / 2);
  return { crossings: Float64Array.from(crossings.slice(from)), seen: Uint8Array.from(shown.slice(from)) };
}
