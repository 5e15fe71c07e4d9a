import { NORMAL_QUARTILE, quantile, straightScatter } from './straightScatter.ts';

/** A stretch of an envelope that moves fast, between two that don't. Indices of the envelope's values. */
export interface Change {
  /** The last value before it moves. */
  readonly before: number;
  /** The last value that still moves fast; what follows may still creep. */
  readonly last: number;
}

export interface ChangeOptions {
  /** How much a change must be at least, in the unit of the values, ≥ 0. */
  readonly least: number;
}

export interface Changes {
  readonly changes: readonly Change[];
  /** Standard deviation of one value about a straight line, in the quiet part of the record. */
  readonly scatter: number;
}

/** Values a cycle: one each half cycle. */
const A_CYCLE = 2;
/** Fast means within two cycles. */
const LAG = 2 * A_CYCLE;
/** Movements nearer than five cycles to each other are one change: the way back, or ringing. */
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
 * quiet half. Changes less than five cycles apart are one.
 */
export function changes(values: Float64Array, { least }: ChangeOptions): Changes {
  if (values.length < 2 * LAG) return { changes: [], scatter: 0 };
  const moves = values.slice(LAG).map((value, i) => value - values[i]!);
  const drift = quantile(moves, 0.5);
  const distances = moves.map((move) => Math.abs(move - drift));
  const restless = quantile(distances, 0.25) / NORMAL_QUARTILE;
  const threshold = Math.max(least + 3 * restless, 6 * restless);
  const found: Change[] = [];
  distances.forEach((distance, i) => {
    if (!(distance > threshold)) return;
    const open = found.at(-1);
    const last = i + LAG;
    // Two values straddle a sharp change; the first may still lie under the threshold.
    const before = i + 1;
    if (open !== undefined && i - open.last < APART) found[found.length - 1] = { ...open, last };
    else found.push({ before, last });
  });
  return { changes: found, scatter: straightScatter(values) };
}
