import { figureText } from '../numbers/figureText.ts';
import type { MainFigures } from './mainFigures.ts';

/** An average-responding meter is worth a line when it is off by more than this share. */
const noticeableRatio = 0.01;

/**
 * What a meter that is not true-RMS shows on this wave, where that is noticeably off.
 *
 * @returns null where it is not, or can't be told.
 */
export function averageMeterPhrase(
  meter: MainFigures['meter'],
): { readonly row: string; readonly value: string; readonly sentence: string } | null {
  if (meter === null) return null;
  const { trueRmsV, averageRespondingV } = meter;
  if (trueRmsV.value === null || averageRespondingV.value === null) return null;
  if (Math.abs(averageRespondingV.value - trueRmsV.value) <= noticeableRatio * trueRmsV.value) return null;
  const value = figureText(averageRespondingV, 'V');
  return {
    row: 'A meter that is not true-RMS shows',
    value,
    sentence: `A meter that is not true-RMS shows ${value} here.`,
  };
}
