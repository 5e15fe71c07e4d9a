import { sharpEdges, type ValueSpan } from './sharpEdges.ts';

/** A stretch of an envelope that moves fast, between two that don't. Indices of the envelope's values. */
export interface Change {
  /** The last value before it moves. */
  readonly before: number;
  /** The last value that still moves fast; what follows may still creep. */
  readonly last: number;
  /** The first value that lies wholly behind a sharp edge; absent where the change isn't sharp. */
  readonly levelFrom?: number;
}

/** A change with the most that it goes by within two cycles, in the unit of the values. */
export interface SizedChange extends Change {
  readonly size: number;
}

interface ChangeOptions {
  /** How much a change must be at least, in the unit of the values, ≥ 0. */
  readonly least: number;
  /** The parts of the record that are looked at, each by itself, ascending. Default: all of it. */
  readonly spans?: readonly ValueSpan[];
}

interface Changes {
  readonly changes: readonly SizedChange[];
  /** Standard deviation of one value about a straight line, in the quiet part of the record. */
  readonly scatter: number;
  /** Standard deviation of what it goes by within two cycles where nothing changes. */
  readonly restless: number;
}

/** Values a cycle: one each half cycle. */
const A_CYCLE = 2;
/** Fast means within two cycles. */
const LAG = 2 * A_CYCLE;
/**
 * Movements nearer than five cycles to each other are one change: the way back, or ringing. Sharp edges between levels
 * are one each.
 */
const APART = 5 * A_CYCLE;

/**
 * Where an envelope changes within two cycles by more than it otherwise does.
 *
 * d[k] = value[k + 2] − value[k − 2], two cycles apart. Its median over the record is the steady drift, which
 * is no change; the quartile of its distance from that is the record's own restlessness: noise, flicker. A
 * change is a distance over `least` beyond three times that and over six times that.
 *
 * @param values - shape N, one each half cycle. Not changed.
 * @remarks The quartile, not the median, so that a record which rings for half of its length still shows its
 * quiet half. Changes less than five cycles apart are one, unless the later is a sharp edge between two levels.
 */
export function changes(values: Float64Array, { least, spans = [whole(values)] }: ChangeOptions): Changes {
  const movesOf = ({ first, last }: ValueSpan): Float64Array =>
    values.slice(first + LAG, last + 1).map((value, i) => value - values[first + i]!);
  const moves = spans.flatMap((span) => [...movesOf(span)]);
  // Two cycles and no more tell nothing of how the record moves otherwise.
  if (moves.length < LAG) return { changes: [], scatter: 0, restless: 0 };
  const drift = quantile(Float64Array.from(moves), 0.5);
  const restless =
    quantile(
      Float64Array.from(moves, (move) => Math.abs(move - drift)),
      0.25,
    ) / NORMAL_QUARTILE;
  const threshold = thresholdOver(restless, least);
  const scatter = scatterOf(values, spans);
  const found = spans.flatMap((span) => {
    const slow: SizedChange[] = [];
    movesOf(span).forEach((move, i) => {
      const size = Math.abs(move - drift);
      if (!(size > threshold)) return;
      const open = slow.at(-1);
      const last = span.first + i + LAG;
      // Two values straddle a sharp change; the first may still lie under the threshold.
      const before = span.first + i + 1;
      if (open !== undefined && span.first + i - open.last < APART) {
        slow[slow.length - 1] = { ...open, last, size: Math.max(open.size, size) };
      } else slow.push({ before, last, size });
    });
    return parted(values, slow, sharpEdges(values, span, { least: threshold, scatter }), scatter);
  });
  return { changes: found, scatter, restless };
}

/** What a change must go by to be one, where it must go by `least` and the record is restless. */
function thresholdOver(restless: number, least: number): number {
  return Math.max(least + 3 * restless, 6 * restless);
}

/** Whether a change is one of `least` too. */
export function isOver({ size }: SizedChange, restless: number, least: number): boolean {
  return size > thresholdOver(restless, least);
}

/** Whether two changes are near enough to each other to be parts of one. */
export function isBeside(one: Change, other: Change): boolean {
  return one.before - other.last < APART && other.before - one.last < APART;
}

/** Of the quietest part that is long enough to tell. */
function scatterOf(values: Float64Array, spans: readonly ValueSpan[]): number {
  const told = spans.filter(({ first, last }) => last - first >= 2 * LAG);
  return told.length === 0
    ? 0
    : Math.min(...told.map(({ first, last }) => straightScatter(values.subarray(first, last + 1))));
}

const whole = (values: Float64Array): ValueSpan => ({ first: 0, last: values.length - 1 });

/**
 * Changes split where a sharp edge follows another and the values between them stand still: ringing and a regulator's
 * way back don't.
 */
function parted(
  values: Float64Array,
  slow: readonly SizedChange[],
  edges: readonly ValueSpan[],
  scatter: number,
): SizedChange[] {
  return slow.flatMap((change) => {
    const [edge, ...more] = edges.filter(({ first, last }) => last > change.before && first <= change.last);
    if (edge === undefined || edge.first > change.before + LAG) return [change];
    const kept = [edge];
    for (const next of more) {
      const { last } = kept.at(-1)!;
      if (isStill(values, last, next, scatter)) kept.push(next);
    }
    return kept.map(({ first, last }, i) => ({
      before: i === 0 ? change.before : first,
      last: kept[i + 1]?.first ?? change.last,
      levelFrom: last,
      size: kept.length === 1 ? change.size : Math.abs(values[last]! - values[first]!),
    }));
  });
}

/** Of an edge: how far the values before it may lie apart. */
const STILL = 0.05;

function isStill(values: Float64Array, from: number, edge: ValueSpan, scatter: number): boolean {
  const level = values.subarray(from, edge.first + 1);
  if (level.length < A_CYCLE) return false;
  const [low, high] = [level.reduce((a, b) => Math.min(a, b)), level.reduce((a, b) => Math.max(a, b))];
  return high - low <= Math.max(STILL * Math.abs(values[edge.last]! - values[edge.first]!), 4 * scatter);
}

/** The first quartile of |x| of a standard normal. */
const NORMAL_QUARTILE = 0.3186393639643751;

/** Values that one value shares no sample with its next: a cycle. */
const CYCLE = 2;

/**
 * Standard deviation of one value of an envelope about a straight line, in the quiet part of the record.
 *
 * σ = first quartile of |x[k − 2] − 2x[k] + x[k + 2]| / (0.3186·√6)
 *
 * @param values - shape N, one each half cycle. Not changed.
 * @returns in the unit of the values, ≥ 0; 0 for fewer than five.
 * @remarks Second differences over two cycles leave nothing of a drift and little of a slow recovery.
 */
export function straightScatter(values: Float64Array): number {
  if (values.length <= 2 * CYCLE) return 0;
  const bends = values
    .slice(2 * CYCLE)
    .map((value, i) => Math.abs(value - 2 * values[i + CYCLE]! + values[i]!));
  // √6: the norm of the weights 1, −2, 1.
  return quantile(bends, 0.25) / (NORMAL_QUARTILE * Math.sqrt(6));
}

/** The value that a share of the sorted values lies below, without interpolation. */
function quantile(values: Float64Array, share: number): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.floor(share * (sorted.length - 1))]!;
}
