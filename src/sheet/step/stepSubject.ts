import type { PicturedEvent, PicturedStep, StepPicture } from './stepPicture.ts';

/** What a sheet is about: the one change that it looks at closely; null where nothing changes. */
export type StepSubject =
  | { readonly kind: 'step'; readonly step: PicturedStep; readonly index: number }
  | { readonly kind: 'event'; readonly event: PicturedEvent }
  | null;

/** Events that come before any load step, which they would explain, then those that come after. */
const breaks: readonly PicturedEvent['kind'][] = ['transfer', 'outage'];
const others: readonly PicturedEvent['kind'][] = [
  'cut-off',
  'failed start',
  'hiccup',
  'brown-out',
  'start-up',
  'idle bursts',
  'interruption',
  'dip',
  'swell',
  'inrush',
];

/** Chooses a break of the voltage, else the step that takes it farthest, else whatever event there is. */
export function stepSubject({ steps, events }: Pick<StepPicture, 'steps' | 'events'>): StepSubject {
  const first = (kinds: readonly PicturedEvent['kind'][]): PicturedEvent | undefined =>
    kinds.flatMap((kind) => events.filter((event) => event.kind === kind))[0];
  const broken = first(breaks);
  if (broken !== undefined) return { kind: 'event', event: broken };
  const reach = ({ before, extreme }: PicturedStep): number => Math.abs(extreme.value - before.value);
  const [step] = [...steps].sort((a, b) => reach(b) - reach(a));
  if (step !== undefined) return { kind: 'step', step, index: steps.indexOf(step) };
  const event = first(others);
  return event === undefined ? null : { kind: 'event', event };
}
