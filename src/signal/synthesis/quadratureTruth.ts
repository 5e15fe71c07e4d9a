import { gaussLegendre } from './gaussLegendre.ts';
import { harmonicOf } from './harmonicOf.ts';
import { integral } from './integral.ts';
import type { TruthCore } from './waveTruth.ts';

/**
 * The truth of a wave by numerical quadrature of its exact shape, piece by piece, for shapes or figures
 * without a closed form.
 *
 * @param at - the wave, one cycle long, smooth between the breaks.
 * @param breaks - phases in cycles where it jumps or has a corner: ascending, in [0, 1). May be empty.
 * @param fastestOrder - highest order that the shape itself contains between the breaks.
 * @returns relative accuracy 1e-10 or better while the pieces are smooth.
 */
export function quadratureTruth(
  at: (phaseCycles: number) => number,
  breaks: readonly number[],
  fastestOrder: number,
): TruthCore {
  const rule = gaussLegendre(20);
  const pieces = piecesBetween(breaks);
  const overCycle = (f: (phase: number) => number, order: number): number =>
    pieces.reduce((total, [from, to]) => {
      const panels = 2 + Math.ceil(2 * (order + fastestOrder) * (to - from));
      return total + integral(f, from, to, panels, rule);
    }, 0);
  return {
    rms: Math.sqrt(overCycle((phase) => at(phase) ** 2, fastestOrder)),
    mean: overCycle(at, 0),
    peak: highest(at, pieces, fastestOrder),
    trough: -highest((phase) => -at(phase), pieces, fastestOrder),
    meanAbsoluteAbout: (level) => {
      const above = (phase: number): number => at(phase) - level;
      const splits = pieces.flatMap(([from, to]) => signChanges(above, from, to, fastestOrder));
      return splits.reduce((total, [from, to]) => {
        const panels = 2 + Math.ceil(2 * fastestOrder * (to - from));
        return total + Math.abs(integral(above, from, to, panels, rule));
      }, 0);
    },
    harmonic: (order) => {
      const k = 2 * Math.PI * order;
      return harmonicOf(
        2 * overCycle((phase) => at(phase) * Math.cos(k * phase), order),
        2 * overCycle((phase) => at(phase) * Math.sin(k * phase), order),
      );
    },
  };
}

type Piece = readonly [from: number, to: number];

function piecesBetween(breaks: readonly number[]): readonly Piece[] {
  const first = breaks[0] ?? 0;
  const ends = [...breaks.slice(1), first + 1];
  return ends.map((end, i) => [breaks[i] ?? 0, end] as const).filter(([from, to]) => to > from);
}

/** How many points a piece is scanned at, so that no lobe of the fastest part falls between two. */
function scanCount([from, to]: Piece, fastestOrder: number): number {
  return 64 + Math.ceil(32 * fastestOrder * (to - from));
}

/** The piece cut where f changes sign, each cut by bisection; f is never taken at the ends, which may jump. */
function signChanges(f: (x: number) => number, from: number, to: number, fastestOrder: number): Piece[] {
  const count = scanCount([from, to], fastestOrder);
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

/** The supremum: the best point of a scan, then a golden-section search between its neighbours. */
function highest(f: (x: number) => number, pieces: readonly Piece[], fastestOrder: number): number {
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
