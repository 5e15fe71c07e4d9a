import type { FoldedCycle } from '../signal/foldedCycle.ts';

/** What a point of a folded cycle is by a straight line through it and its neighbours on one side. */
interface OneSidedLine {
  /** In U. */
  value: number;
  /** In U a cycle. */
  slope: number;
  /** Mean square of what the line leaves, for one sample. */
  left: number;
}

/**
 * Straight lines through the points on one side of a point, so that none reaches over an edge: of the two, the one that
 * its points lie better on.
 *
 * @param cycle - its phases and weights.
 * @param reach - points of a line, three or more.
 * @returns takes shape P of values at those phases; gives a reader of the line at a point, good until it is called anew.
 */
export function oneSidedLines(
  cycle: FoldedCycle,
  reach: number,
): (values: Float64Array) => (point: number) => OneSidedLine {
  const { phases, weights } = cycle;
  const count = phases.length;
  const length = count + 2 * reach + 1;
  // Sums over all points before one, of a cycle continued by `reach` points at either end.
  const [w, x, xx, y, xy, yy] = Array.from({ length: 6 }, () => new Float64Array(length)) as Sums;
  const sums = { w, x, xx, y, xy, yy };
  for (let i = 0; i + 1 < length; i++) {
    const turns = Math.floor((i - reach) / count);
    const from = i - reach - turns * count;
    const weight = weights[from]!;
    const phase = phases[from]! + turns;
    w[i + 1] = w[i]! + weight;
    x[i + 1] = x[i]! + weight * phase;
    xx[i + 1] = xx[i]! + weight * phase * phase;
  }
  const before: OneSidedLine = { value: 0, slope: 0, left: 0 };
  const behind: OneSidedLine = { value: 0, slope: 0, left: 0 };
  const read = (point: number): OneSidedLine => {
    const at = point + reach;
    lineOf(before, sums, at - reach + 1, at + 1, phases[point]!);
    lineOf(behind, sums, at, at + reach, phases[point]!);
    return before.left <= behind.left ? before : behind;
  };
  return (values) => {
    let from = (count - (reach % count)) % count;
    let turns = Math.floor(-reach / count);
    for (let i = 0; i + 1 < length; i++) {
      const value = values[from]!;
      const weighed = weights[from]! * value;
      y[i + 1] = y[i]! + weighed;
      xy[i + 1] = xy[i]! + weighed * (phases[from]! + turns);
      yy[i + 1] = yy[i]! + weighed * value;
      from++;
      if (from === count) [from, turns] = [0, turns + 1];
    }
    return read;
  };
}

type Sums = [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];

interface RunningSums {
  readonly w: Float64Array;
  readonly x: Float64Array;
  readonly xx: Float64Array;
  readonly y: Float64Array;
  readonly xy: Float64Array;
  readonly yy: Float64Array;
}

/** The line through the points from ≤ i < to, read at a phase. */
function lineOf(line: OneSidedLine, s: RunningSums, from: number, to: number, at: number): void {
  const w = s.w[to]! - s.w[from]!;
  const meanX = (s.x[to]! - s.x[from]!) / w;
  const meanY = (s.y[to]! - s.y[from]!) / w;
  const xx = Math.max(0, s.xx[to]! - s.xx[from]! - w * meanX * meanX);
  const xy = s.xy[to]! - s.xy[from]! - w * meanX * meanY;
  const yy = Math.max(0, s.yy[to]! - s.yy[from]! - w * meanY * meanY);
  line.slope = xx > 0 ? xy / xx : 0;
  line.value = meanY + line.slope * (at - meanX);
  line.left = Math.max(0, yy - line.slope * xy) / w;
}
