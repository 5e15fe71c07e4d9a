import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { shortText } from './shortText.ts';
import { storyOf } from './story.ts';

/** The question that a result answers: whether what was claimed holds, else what happened, else what the wave is. */
export function questionSentence(
  result: Pick<MeasureResult, 'claims' | 'events' | 'steps' | 'excursions'>,
): string {
  const [first, ...others] = cleanTexts(result.claims);
  if (first !== undefined)
    return others.length === 0
      ? `Does “${shortText(first.text, 60)}” hold?`
      : `Do the ${1 + others.length} claims hold?`;
  const story = storyOf(result);
  if (story === null) return 'What is it?';
  if (story.kind === 'step') return 'Does the voltage hold when the load changes?';
  const isAway = story.kind === 'event' && (story.event.kind === 'transfer' || story.event.kind === 'outage');
  return isAway ? 'How long is the voltage away?' : 'Does the voltage hold?';
}
