/** Weights of the samples of a record. */
export interface CycleWeights {
  /** Samples, N. */
  readonly length: number;
  /** Of sample n, 0 ≤ n < N. */
  readonly at: (n: number) => number;
  /** Of every sample but the first and last `ramp`. */
  readonly flat: number;
  readonly ramp: number;
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
  let sum = 0;
  let squares = 0;
  for (let n = 0; n < length; n++) {
    const fromEnd = Math.min(n, length - 1 - n);
    const weight = fromEnd < ramp ? rise[fromEnd]! : 1;
    sum += weight;
    squares += weight * weight;
  }
  for (let n = 0; n < ramp; n++) rise[n]! /= sum;
  const flat = 1 / sum;
  const at = (n: number): number => {
    const fromEnd = Math.min(n, length - 1 - n);
    return fromEnd < ramp ? rise[fromEnd]! : flat;
  };
  return { length, at, flat, ramp, averagedSamples: (sum * sum) / squares };
}

/** Mean over the sample's own interval [n, n+1] of the ramp that reaches 1 at `surplus`. */
function coverage(n: number, surplus: number): number {
  if (n + 1 <= surplus) return (n + 0.5) / surplus;
  if (n >= surplus) return 1;
  const ramp = surplus - n;
  return (ramp * (n + surplus)) / (2 * surplus) + (1 - ramp);
}
