/**
 * The exponent e of a number as 2^e ≤ |x| < 2^(e + 1), exactly.
 *
 * @param x - finite, not 0.
 */
export function binaryExponent(x: number): number {
  const size = Math.abs(x);
  // The engine's logarithm may be a little off; powers of two are not.
  const near = Math.floor(Math.log2(size));
  if (size < 2 ** near) return near - 1;
  return size >= 2 ** (near + 1) ? near + 1 : near;
}
