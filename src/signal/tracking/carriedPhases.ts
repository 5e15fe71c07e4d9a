/**
 * Phases unwrapped where they are seen, in time order, and carried on from the nearer side, at the frequency of
 * the cycle there, where they aren't.
 *
 * @param at - positions, ascending; shape M, M ≥ 2.
 * @param halfTurns - phases at them, in half turns, known up to whole turns; only the seen are read.
 * @param seen - 1 where the phase is known; at least one is.
 * @returns shape M, ascending.
 */
export function carriedPhases(at: Float64Array, halfTurns: Float64Array, seen: Uint8Array): Float64Array {
  const filled = Float64Array.from(halfTurns);
  // The phase at m, carried on from `from` along the cycle on its far side.
  const carried = (from: number, m: number): number => {
    const away = m > from ? -1 : 1;
    let far = from;
    while (Math.abs(far - from) < 2 && seen[far + away] === 1) far += away;
    const slope =
      far === from
        ? (m - from) / (at[m]! - at[from]!)
        : (filled[far]! - filled[from]!) / (at[far]! - at[from]!);
    return filled[from]! + slope * (at[m]! - at[from]!);
  };
  let last = -1;
  for (let here = 0; here < filled.length; here++) {
    if (seen[here] === 0) continue;
    if (last >= 0) filled[here]! -= 2 * Math.round((filled[here]! - carried(last, here)) / 2);
    last = here;
  }
  const after = nextSeen(seen);
  let before = -1;
  for (let m = 0; m < filled.length; m++) {
    if (seen[m] === 1) {
      before = m;
      continue;
    }
    const next = after[m]!;
    const fromBefore = next === seen.length || (before >= 0 && m - before <= next - m);
    filled[m] = carried(fromBefore ? before : next, m);
  }
  // Time runs forwards, also where the phase jumps back.
  for (let m = 1; m < filled.length; m++) filled[m] = Math.max(filled[m]!, filled[m - 1]! + 0.01);
  return filled;
}

/** The index of the first seen at or after each; the length where there is none. */
function nextSeen(seen: Uint8Array): Uint32Array {
  const next = new Uint32Array(seen.length);
  let at = seen.length;
  for (let m = seen.length - 1; m >= 0; m--) {
    if (seen[m] === 1) at = m;
    next[m] = at;
  }
  return next;
}
