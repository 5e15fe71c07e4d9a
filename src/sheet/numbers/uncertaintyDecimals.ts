/**
 * The decimal place to which an uncertainty, and so its value, is printed.
 *
 * Two significant digits when they start with 1 or 2, one when they start with 3 or more (2.96 is 3.0, so 3):
 * the rounding moves the uncertainty by 17 % of itself at most, and no digit is shown that means nothing.
 *
 * @param uncertainty - positive and finite.
 * @returns digits after the point; negative for tens, hundreds, …
 * @see JCGM 100:2008, 7.2.6: two significant digits usually suffice.
 * @example uncertaintyDecimals(0.0234) // 3, printed 0.023
 * @example uncertaintyDecimals(3.6) // 0, printed 4
 */
export function uncertaintyDecimals(uncertainty: number): number {
  if (!(uncertainty > 0 && Number.isFinite(uncertainty))) {
    throw new RangeError(`an uncertainty to round by must be positive and finite, got ${uncertainty}`);
  }
  const [mantissa, exponent] = uncertainty.toExponential(1).split('e') as [string, string];
  return (Number(mantissa) < 3 ? 1 : 0) - Number(exponent);
}
