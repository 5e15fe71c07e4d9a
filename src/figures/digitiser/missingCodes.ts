import type { CodeCounts } from './codeCounts.ts';

/** Times the model must ask for a code before its absence is no chance: e⁻¹⁰ = 5e-5. */
const ASKED_OFTEN = 10;

/**
 * Codes between the extremes that never occur though the wave passes them: an ideal converter gives none.
 *
 * @see IEEE Std 1241-2010, missing codes, by the histogram method (from memory).
 */
export function missingCodes({ observed, expected }: CodeCounts): number {
  let missing = 0;
  for (let i = 1; i < observed.length - 1; i++) {
    if (observed[i] === 0 && expected[i]! >= ASKED_OFTEN) missing++;
  }
  return missing;
}
