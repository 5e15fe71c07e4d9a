import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { shortText } from './shortText.ts';

/** The question that a result answers: whether what was claimed holds, or what the wave is. */
export function questionSentence(result: Pick<MeasureResult, 'claims'>): string {
  const [first, ...others] = cleanTexts(result.claims);
  if (first === undefined) return 'What is it?';
  return others.length === 0
    ? `Does “${shortText(first.text, 60)}” hold?`
    : `Do the ${1 + others.length} claims hold?`;
}
