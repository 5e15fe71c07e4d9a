/**
 * Weights that average a record over whole cycles whatever its length: every window of M = ⌊N / P⌋ periods
 * that fits into the record counts the same, so the weights rise over the surplus at the start, stay flat
 * and fall at the end.
 *
 * @param length - N samples.
 * @param periodSamples - P, 0 < P ≤ N, not rounded.
 * @returns shape N, positive, sum 1. For a wave of period P, Σ w·f(v) is the mean of f(v) over a cycle; the
 * error of a sampled jump falls with the surplus, because jumps at the ends are weighted softly.
 * @throws RangeError when the record is shorter than a period.
 */
export function wholeCycleWeights(length: number, periodSamples: number): Float64Array {
  const cycles = Math.floor(length / periodSamples + 1e-9);
  if (cycles < 1) throw new RangeError('whole cycles of a record shorter than one period');
  const surplus = Math.max(0, length - cycles * periodSamples);
  const weights = new Float64Array(length);
  let sum = 0;
  for (let n = 0; n < length; n++) {
    const fromEnd = Math.min(n, length - 1 - n);
    weights[n] = coverage(fromEnd, surplus);
    sum += weights[n]!;
  }
  for (let n = 0; n < length; n++) weights[n]! /= sum;
  return weights;
}

/** Mean over the sample's own interval [n, n+1] of the ramp that reaches 1 at `surplus`. */
function coverage(n: number, surplus: number): number {
  if (n + 1 <= surplus) return (n + 0.5) / surplus;
  if (n >= surplus) return 1;
  const ramp = surplus - n;
  return (ramp * (n + surplus)) / (2 * surplus) + (1 - ramp);
}
