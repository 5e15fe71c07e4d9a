import { binaryExponent } from './binaryExponent.ts';
import { LN2_HIGH, LN2_LOW } from './ln2.ts';

/**
 * The natural logarithm, to about the last place of a double; the same on every engine.
 *
 * @returns −∞ for 0, NaN below.
 */
export function log(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  let doublings = binaryExponent(x);
  const half = Math.trunc(doublings / 2);
  let mantissa = x / 2 ** half / 2 ** (doublings - half);
  if (mantissa > Math.SQRT2) {
    mantissa /= 2;
    doublings++;
  }
  // ln m = 2·artanh s, s = (m − 1)/(m + 1), |s| < 0.172: what follows s²³/23 is below 10⁻¹⁸ of s.
  const above = mantissa - 1;
  const s = above / (2 + above);
  const z = s * s;
  let sum = 0;
  for (let k = 23; k >= 3; k -= 2) sum = 2 / k + z * sum;
  // 2s = f − s·f with f = m − 1, which is exact.
  const rest = above - s * (above - z * sum);
  return doublings * LN2_HIGH + (doublings * LN2_LOW + rest);
}
