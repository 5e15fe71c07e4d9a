import { binaryExponent } from './binaryExponent.ts';
import { log } from './log.ts';

/**
 * The binary logarithm, exact for powers of two; the same on every engine.
 *
 * @param x - up to 10³⁰⁰, and no less than 10⁻³⁰⁰ where it is above 0.
 */
export function log2(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY) return log(x);
  // The whole part nearest to it, so that near 1 nothing is taken away again.
  const exponent = binaryExponent(x * Math.SQRT1_2) + 1;
  return exponent + log(x / 2 ** exponent) * Math.LOG2E;
}
