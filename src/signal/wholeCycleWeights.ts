/** Weights of the samples of a record. */
export interface CycleWeights {
  /** Samples, N. */
  readonly length: number;
  /** Of sample n, 0 ≤ n < N. */
  readonly at: (n: number) => number;
  /**
   * Of the samples from ≤ n < to.
   *
   * @param room - shape to − from or more, to write them into.
   */
  readonly stretch: (from: number, to: number, room: Float64Array) => Float64Array;
  /** Sample count that the noise of a weighted mean averages over: 1 / Σ w². */
  readonly averagedSamples: number;
}

/**
 * Weights that average a record over whole cycles whatever its length: every window of M = ⌊N / P⌋ periods
 * that fits into the record counts the same, so the weights rise over the surplus at the start, stay flat
 * and fall at the end.
 *
 * @param length - N samples.
 * @param periodSamples - P, 0 < P ≤ N, not rounded.
 * @returns positive, sum 1. For a wave of period P, Σ w·f(v) is the mean of f(v) over a cycle; the
 * error of a sampled jump falls with the surplus, because jumps at the ends are weighted softly.
 * @throws RangeError when the record is shorter than a period.
 */
export function wholeCycleWeights(length: number, periodSamples: number): CycleWeights {
  const cycles = Math.floor(length / periodSamples + 1e-9);
  if (cycles < 1) throw new RangeError('whole cycles of a record shorter than one period');
  const surplus = Math.max(0, length - cycles * periodSamples);
  const ramp = Math.min(Math.ceil(length / 2), Math.ceil(surplus));
  const rise = Float64Array.from({ length: ramp }, (_, n) => coverage(n, surplus));
  let sum = Math.max(0, length - 2 * ramp);
  let squares = sum;
  for (let n = 0; n < ramp; n++) {
    // Ramps that meet share the sample in the middle, where there is one.
    const times = 2 * n + 1 === length ? 1 : 2;
    sum += times * rise[n]!;
    squares += times * rise[n]! ** 2;
  }
  for (let n = 0; n < ramp; n++) rise[n]! /= sum;
  const flat = 1 / sum;
  const at = (n: number): number => {
    const fromEnd = Math.min(n, length - 1 - n);
    return fromEnd < ramp ? rise[fromEnd]! : flat;
  };
  const stretch = (from: number, to: number, room: Float64Array): Float64Array => {
    const weights = room.subarray(0, to - from).fill(flat);
    for (let n = from; n < Math.min(to, ramp); n++) weights[n - from] = at(n);
    for (let n = Math.max(from, length - ramp); n < to; n++) weights[n - from] = at(n);
    return weights;
  };
  return { length, at, stretch, averagedSamples: (sum * sum) / squares };
}

/** Mean over the sample's own interval [n, n+1] of the ramp that reaches 1 at `surplus`. */
function coverage(n: number, surplus: number): number {
  if (n + 1 <= surplus) return (n + 0.5) / surplus;
  if (n >= surplus) return 1;
  const ramp = surplus - n;
  return (ramp * (n + surplus)) / (2 * surplus) + (1 - ramp);
}
