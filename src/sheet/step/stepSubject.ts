import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { type Story, storyOf } from '../answer/story.ts';
import { eventTimes } from './eventTimes.ts';
import type { PicturedEvent, PicturedStep, StepPicture } from './stepPicture.ts';

/** What a picture is about: the one change that it looks at closely; null where nothing changes. */
export type StepSubject =
  | { readonly kind: 'step'; readonly step: PicturedStep; readonly index: number }
  | { readonly kind: 'event'; readonly event: PicturedEvent }
  | null;

/** What the story of a result is, as its picture holds it. */
export function stepSubject(
  result: Pick<MeasureResult, 'events' | 'steps' | 'excursions'>,
  { steps, events }: Pick<StepPicture, 'steps' | 'events'>,
): StepSubject {
  const story = storyOf(result);
  if (story === null) return null;
  if (story.kind === 'step') {
    const index = steps.findIndex(({ atS }) => atS.value === story.step.atS.value);
    const step = steps[index];
    return step === undefined ? null : { kind: 'step', step, index };
  }
  const { kind, startS } = beginningOf(story);
  const event = events.find((one) => one.kind === kind && eventTimes(one).startS === startS);
  return event === undefined ? null : { kind: 'event', event };
}

function beginningOf(story: Exclude<Story, { kind: 'step' }>): {
  readonly kind: PicturedEvent['kind'];
  readonly startS: number;
} {
  if (story.kind === 'excursion') return story.excursion;
  const { event } = story;
  return { kind: event.kind, startS: event.kind === 'inrush' ? event.atS.value : event.startS.value };
}
