import { LN2_HIGH, LN2_LOW } from './ln2.ts';

/** Where the exponential of a double overflows, and where it is nothing. */
const LARGEST = 709.782712893384;
const SMALLEST = -745.2;

/** e to the power x, to about the last place of a double; the same on every engine. */
export function exp(x: number): number {
  if (Number.isNaN(x)) return x;
  if (x > LARGEST) return Number.POSITIVE_INFINITY;
  if (x < SMALLEST) return 0;
  const doublings = Math.round(x / Math.LN2);
  const high = x - doublings * LN2_HIGH;
  const low = doublings * LN2_LOW;
  const rest = high - low;
  // |rest| ≤ ln 2 / 2: what follows rest¹⁴/14! is below 10⁻¹⁸.
  let sum = 1 / 87178291200;
  for (const factor of factors) sum = factor + rest * sum;
  const power = 1 + (rest + (high - rest - low) + rest * rest * sum);
  // In two steps, for 2^1024 and 2^−1075 are no doubles.
  const half = Math.trunc(doublings / 2);
  return power * 2 ** half * 2 ** (doublings - half);
}

/** 1/13! to 1/2!. */
const factors = [
  1 / 6227020800,
  1 / 479001600,
  1 / 39916800,
  1 / 3628800,
  1 / 362880,
  1 / 40320,
  1 / 5040,
  1 / 720,
  1 / 120,
  1 / 24,
  1 / 6,
  1 / 2,
];
