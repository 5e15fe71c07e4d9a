import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { answerSentence } from './answerSentence.ts';
import { questionSentence } from './questionSentence.ts';
import { storyOf } from './story.ts';

/** Question and answer in one line; where something happened, that comes first, and so without the question. */
export function titleSentence(result: MeasureResult): string {
  const answer = answerSentence(result);
  return storyOf(result) === null ? `${questionSentence(result)} ${answer}` : answer;
}
