import { type Piece, scanCount } from './piece.ts';

/**
 * The least upper bound of f: the best point of a scan, then a golden-section search between its neighbours.
 *
 * @param pieces - where f is smooth; it may jump between them.
 * @param fastestOrder - highest order that f contains on a piece.
 */
export function supremum(f: (x: number) => number, pieces: readonly Piece[], fastestOrder: number): number {
  let best = -Infinity;
  for (const piece of pieces) {
    const [from, to] = piece;
    const step = (to - from) / scanCount(piece, fastestOrder);
    let bestAt = from;
    let bestHere = -Infinity;
    for (let x = from; x < to; x += step) {
      const value = f(x);
      if (value > bestHere) [bestHere, bestAt] = [value, x];
    }
    // Kept a hair inside the piece: its ends may be jumps.
    const hair = 1e-12 * (to - from);
    const low = Math.max(from, bestAt - step);
    const high = Math.min(to - hair, bestAt + step);
    best = Math.max(best, bestHere, goldenSection(f, low, high));
  }
  return best;
}

function goldenSection(f: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = from;
  let high = to;
  for (let step = 0; step < 60; step++) {
    const left = high - ratio * (high - low);
    const right = low + ratio * (high - low);
    if (f(left) > f(right)) high = right;
    else low = left;
  }
  return f((low + high) / 2);
}
