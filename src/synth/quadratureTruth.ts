import { cos, sin } from '../base/elementary.ts';
import { harmonicOf, type TruthCore } from './knownWave.ts';

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
    peak: supremum(at, pieces, fastestOrder),
    trough: -supremum((phase) => -at(phase), pieces, fastestOrder),
    meanAbsoluteAbout: (level) => {
      const above = (phase: number): number => at(phase) - level;
      const splits = pieces.flatMap((piece) => signChanges(above, piece, fastestOrder));
      return splits.reduce((total, [from, to]) => {
        const panels = 2 + Math.ceil(2 * fastestOrder * (to - from));
        return total + Math.abs(integral(above, from, to, panels, rule));
      }, 0);
    },
    harmonic: (order) => {
      const k = 2 * Math.PI * order;
      return harmonicOf(
        2 * overCycle((phase) => at(phase) * cos(k * phase), order),
        2 * overCycle((phase) => at(phase) * sin(k * phase), order),
      );
    },
  };
}

function piecesBetween(breaks: readonly number[]): readonly Piece[] {
  const first = breaks[0] ?? 0;
  const ends = [...breaks.slice(1), first + 1];
  return ends.map((end, i) => [breaks[i] ?? 0, end] as const).filter(([from, to]) => to > from);
}

/** A stretch of a cycle, in cycles, on which a wave is smooth. */
type Piece = readonly [from: number, to: number];

/**
 * How many points a piece is scanned at, so that no lobe of the fastest part falls between two.
 *
 * @param fastestOrder - highest order that the wave contains on the piece.
 */
function scanCount([from, to]: Piece, fastestOrder: number): number {
  return 64 + Math.ceil(32 * fastestOrder * (to - from));
}

/** Points and weights on (−1, 1). */
interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * The Gauss–Legendre rule: exact for polynomials up to degree 2n − 1. The nodes are the zeros of the
 * Legendre polynomial Pn, by Newton's method from the usual cosine start.
 *
 * @param count - n, 1 and up.
 * @see Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.29 and 22.16.6
 */
export function gaussLegendre(count: number): QuadratureRule {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    // Quadratic convergence from a start good to 1/n²: ten steps are more than it needs.
    for (let step = 0; step < 10; step++) {
      let previous = 1;
      let value = x;
      for (let degree = 2; degree <= count; degree++) {
        const next = ((2 * degree - 1) * x * value - (degree - 1) * previous) / degree;
        previous = value;
        value = next;
      }
      slope = (count * (x * value - previous)) / (x * x - 1);
      x -= value / slope;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

/**
 * ∫ f over [from, to], Gauss–Legendre on equal panels.
 *
 * @param rule - how each panel is sampled.
 * @param panels - 1 and up; a rule of 20 points wants about two panels a cycle of the fastest part of f.
 */
export function integral(
  f: (x: number) => number,
  from: number,
  to: number,
  panels: number,
  rule: QuadratureRule,
): number {
  const half = (to - from) / (2 * panels);
  let sum = 0;
  for (let panel = 0; panel < panels; panel++) {
    const middle = from + (2 * panel + 1) * half;
    rule.nodes.forEach((node, i) => {
      sum += (rule.weights[i] as number) * f(middle + half * node);
    });
  }
  return sum * half;
}

/**
 * A piece cut where f changes sign, each cut found by bisection; f is never taken at the ends, which may jump.
 *
 * @param fastestOrder - highest order that f contains on the piece.
 */
function signChanges(f: (x: number) => number, piece: Piece, fastestOrder: number): readonly Piece[] {
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

/**
 * The least upper bound of f: the best point of a scan, then a golden-section search between its neighbours.
 *
 * @param pieces - where f is smooth; it may jump between them.
 * @param fastestOrder - highest order that f contains on a piece.
 */
function supremum(f: (x: number) => number, pieces: readonly Piece[], fastestOrder: number): number {
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
