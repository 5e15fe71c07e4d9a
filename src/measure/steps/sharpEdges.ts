/** Values of an envelope that follow each other, first and last index. */
export interface ValueSpan {
  readonly first: number;
  readonly last: number;
}

interface EdgeOptions {
  /** How much an edge must be at least, in the unit of the values. */
  readonly least: number;
  /** Standard deviation of one value. */
  readonly scatter: number;
}

/** Values that a sharp change takes: the windows of two of them straddle it. */
const EDGE = 3;
/** Of an edge: how much the two values on each side of it may differ, and those on the way from one instant's. */
const FLAT = 0.06;
/**
 * Sharp edges between levels: the whole way within a cycle, two values alike before it and two after it.
 *
 * A regulator's way back and ringing have no such levels, however fast: on a swing of five cycles the two values
 * around each turn differ from those beside them by more than this allows.
 *
 * @param span - the values that are looked at.
 * @returns the last value before and the first after each, in time order.
 */
export function sharpEdges(
  values: Float64Array,
  { first, last }: ValueSpan,
  { least, scatter }: EdgeOptions,
): readonly ValueSpan[] {
  const edges: ValueSpan[] = [];
  for (let k = first + 1; k + EDGE + 1 <= last; k++) {
    const [before, after] = [values[k]!, values[k + EDGE]!];
    const size = Math.abs(after - before);
    if (!(size > least)) continue;
    // Neighbours overlap by half, so that they differ by as much noise as one of them holds.
    const alike = Math.max(FLAT * size, 3 * scatter);
    if (Math.abs(before - values[k - 1]!) > alike || Math.abs(values[k + EDGE + 1]! - after) > alike)
      continue;
    if (!isOneInstant(values, k, alike)) continue;
    const open = edges.at(-1);
    if (open !== undefined && k < open.last) {
      // Where one value straddles it, two places fit: the larger change has both levels whole.
      if (size > Math.abs(values[open.last]! - values[open.first]!))
        edges[edges.length - 1] = { first: k, last: k + EDGE };
      continue;
    }
    edges.push({ first: k, last: k + EDGE });
  }
  return edges;
}

/**
 * The two values on the way straddle one instant: their windows lie half a cycle apart, and half a cycle holds half of
 * a wave's power, so that the second has gone half of the way more than the first, in squares.
 */
function isOneInstant(values: Float64Array, k: number, alike: number): boolean {
  const [before, first, second, after] = [0, 1, 2, EDGE].map((i) => values[k + i]! ** 2) as [
    number,
    number,
    number,
    number,
  ];
  const way = after - before;
  const allowed = (alike / Math.abs(values[k + EDGE]! - values[k]!)) * Math.abs(way);
  const gone = (first - before) * Math.sign(way);
  return (
    Math.abs(second - first - way / 2) <= allowed && gone >= -allowed && gone <= Math.abs(way) / 2 + allowed
  );
}
