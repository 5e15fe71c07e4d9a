import type { ClippedEnds, DigitiserNotice } from '../notices.ts';
import type { CodeCounts } from './codeCounts.ts';

/** What a digitiser made of a wave, by the quantities of IEEE 1057. */
export interface DigitiserFigures {
  /** RMS of all but mean and fundamental, the wave's own harmonics too, in U. */
  readonly noiseAndDistortionRms: number;
  /** Fundamental over that, dB; null where nothing is left over. */
  readonly sinadDb: number | null;
  /** What an ideal converter of this step would reach on this fundamental, dB; null without a step. */
  readonly idealSinadDb: number | null;
  /** RMS of what the fitted harmonics leave, in U: noise, rounding, what is no harmonic. */
  readonly noiseRms: number;
  /** Effective bits with all but the fundamental against them; null without `bits`, or nothing left over. */
  readonly effectiveBits: number | null;
  /** The same with only noise against them: the converter's share, the wave's harmonics forgiven. */
  readonly noiseBits: number | null;
  /** As given, else 8 assumed where 256 codes hold the levels used; null where they don't, or without a step. */
  readonly bits: number | null;
  readonly bitsAssumed: boolean;
  /** Codes from the lowest to the highest seen; null where no grid is seen. */
  readonly levelsUsed: number | null;
  /** Codes of the converter's range, 2^bits; null where `bits` is. */
  readonly levelsAvailable: number | null;
  /** Null where no grid is seen. */
  readonly missingCodes: number | null;
  /** Ends at which samples pile up; null where neither, or no grid is seen. */
  readonly clipped: ClippedEnds | null;
  /** What to set on the scope, codes `digitiser.…`. */
  readonly notices: readonly DigitiserNotice[];
}

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
