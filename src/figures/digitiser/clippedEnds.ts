import type { CodeCounts } from './codeCounts.ts';

export type ClippedEnds = 'top' | 'bottom' | 'both';

/**
 * Ends of the range at which samples pile up on one code, as a converter's rail leaves them.
 *
 * @returns null where neither does.
 * @remarks The last code of an unclipped sine holds at most 2.4 times the samples of the one before it; six times
 * and ten samples make a pile. Two are looked at, as one of them may be missing. A wave that is itself cut dead flat looks the same unless it fills the range.
 */
export function clippedEnds({ observed }: CodeCounts): ClippedEnds | null {
  const last = observed.length - 1;
  if (last < 3) return null;
  const pile = (end: number, inward: 1 | -1): boolean => {
    const count = observed[end]!;
    return count >= 10 && count > 6 * Math.max(observed[end + inward]!, observed[end + 2 * inward]!);
  };
  const top = pile(last, -1);
  const bottom = pile(0, 1);
  return top && bottom ? 'both' : top ? 'top' : bottom ? 'bottom' : null;
}
