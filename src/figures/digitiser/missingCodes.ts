import type { CodeCounts } from './codeCounts.ts';

/** Times the model must ask for a code before its absence is no chance: e⁻¹⁰ = 5e-5. */
const ASKED_OFTEN = 10;

/**
 * Codes between the extremes that never occur though the wave passes them: an ideal converter gives none.
 *
 * @returns their number; 0 where they stand at even distances of more than three codes: then values of a coarser
 * step were printed on a grid a little finer, which skips one every so often.
 * @remarks A converter that loses every 64th code at its carries hides behind that.
 * @see IEEE Std 1241-2010, missing codes, by the histogram method (from memory).
 */
export function missingCodes({ observed, expected }: CodeCounts): number {
  const missing: number[] = [];
  for (let i = 1; i < observed.length - 1; i++) {
    if (observed[i] === 0 && expected[i]! >= ASKED_OFTEN) missing.push(i);
  }
  return isEven(missing) ? 0 : missing.length;
}

/** Three or more, all equally far apart to one code. */
function isEven(codes: readonly number[]): boolean {
  if (codes.length < 3) return false;
  const distances = codes.slice(1).map((code, i) => code - codes[i]!);
  const [shortest, longest] = [Math.min(...distances), Math.max(...distances)];
  return shortest > 3 && longest - shortest <= 1;
}
