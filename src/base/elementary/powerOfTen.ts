/** 10 to the power of a whole number, as the double nearest to it. */
export function powerOfTen(exponent: number): number {
  return Number(`1e${exponent}`);
}
