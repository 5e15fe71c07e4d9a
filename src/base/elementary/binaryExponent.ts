/**
 * The exponent e of a number as 2^e ≤ |x| < 2^(e + 1), exactly.
 *
 * @param x - finite, not 0.
 */
export function binaryExponent(x: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const biased = (view.getUint32(0) >>> 20) & 0x7ff;
  // Below the least normal number the exponent stands in the mantissa.
  return biased === 0 ? binaryExponent(x * 2 ** 54) - 54 : biased - 1023;
}
