import { type Piece, scanCount } from './piece.ts';

/**
 * A piece cut where f changes sign, each cut found by bisection; f is never taken at the ends, which may jump.
 *
 * @param fastestOrder - highest order that f contains on the piece.
 */
export function signChanges(f: (x: number) => number, piece: Piece, fastestOrder: number): readonly Piece[] {
  const [from, to] = piece;
  const count = scanCount(piece, fastestOrder);
  const cuts: number[] = [from];
  let left = from + (0.5 * (to - from)) / count;
  for (let i = 1; i < count; i++) {
    const right = from + ((i + 0.5) * (to - from)) / count;
    if (f(left) * f(right) < 0) cuts.push(zeroBetween(f, left, right));
    left = right;
  }
  cuts.push(to);
  return cuts.slice(1).map((cut, i) => [cuts[i] as number, cut] as const);
}

function zeroBetween(f: (x: number) => number, from: number, to: number): number {
  const rising = f(to) > 0;
  let low = from;
  let high = to;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
