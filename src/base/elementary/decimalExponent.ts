/**
 * The exponent e of a number as 10^e ≤ |x| < 10^(e + 1), of the number as it prints: 3 for 1000, −1 for 0.1.
 *
 * @param x - finite, not 0.
 */
export function decimalExponent(x: number): number {
  return Number(x.toExponential().split('e')[1]);
}
