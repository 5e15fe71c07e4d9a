import { powerOfTen } from '../base/elementary/powerOfTen.ts';

/**
 * The value of the last printed digit of a number: `-0.0200` has 1e-4, `1.25E-03` has 1e-5, `12` has 1.
 *
 * @param token - a number as a file writes it, with either decimal mark.
 * @returns positive; 0 where the token is no number.
 */
export function printedResolution(token: string): number {
  const match = /^[+-]?\d*(?:[.,](\d*))?(?:[eE]([+-]?\d+))?$/.exec(token.trim());
  if (match === null) return 0;
  return powerOfTen(Number(match[2] ?? 0) - (match[1] ?? '').length);
}
