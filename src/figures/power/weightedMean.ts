/**
 * Σ w·f(n) over the samples that carry weight.
 *
 * @param weights - shape N, sum 1; 0 where a sample is missing.
 */
export function weightedMean(weights: Float64Array, f: (n: number) => number): number {
  let sum = 0;
  for (let n = 0; n < weights.length; n++) if (weights[n]! > 0) sum += weights[n]! * f(n);
  return sum;
}
