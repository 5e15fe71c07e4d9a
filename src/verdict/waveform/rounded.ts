/** A number inside a reason, to so many significant digits, without an exponent. */
export function rounded(value: number, digits: number): string {
  return String(Number(value.toPrecision(digits)));
}
