/** x to the power of a whole number ≥ 0, by multiplying; the same on every engine. */
export function wholePower(x: number, exponent: number): number {
  let power = 1;
  for (let i = 0; i < exponent; i++) power *= x;
  return power;
}
