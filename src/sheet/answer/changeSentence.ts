import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { answerSentence } from './answerSentence.ts';
import { changeWords } from './storySentence.ts';
import { storyWords } from './storyWords.ts';

/**
 * What happened in the record and how the claims about it stand, without the wave: "When the load came on, the voltage
 * fell by 8.4 %, give or take 0.6, and settled 1.2 % lower than before within 0.22 s."
 */
export function changeSentence(result: MeasureResult): string {
  const clean = cleanTexts(result);
  const story = storyWords(clean);
  return story === null ? answerSentence(clean) : `${changeWords(clean, story, story.lead)}.`;
}
