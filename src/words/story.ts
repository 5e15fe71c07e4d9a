import type { MeasureResult } from '../assay/measureDocument.ts';
import type { EventResult, ExcursionResult, StepResult } from '../assay/stepsDocument.ts';

/** What a record tells before all else. */
export type Story =
  | { readonly kind: 'event'; readonly event: EventResult }
  | { readonly kind: 'step'; readonly step: StepResult }
  | { readonly kind: 'excursion'; readonly excursion: ExcursionResult };

/** A unit that fails to hold its output, the gravest first. */
const failures = ['hiccup', 'failed start', 'cut-off', 'brown-out', 'outage'] as const;
/** Told where no load step is, which would explain them. */
const beginnings = ['start-up', 'idle bursts'] as const;
const excursionKinds = ['interruption', 'dip', 'swell'] as const;

/**
 * What the story of a result is: a lost output, else a transfer, else the step that takes the voltage farthest, else how
 * the record begins, else what lies outside the band around nominal; null for a wave that is steady throughout. Every
 * text takes its lead from here, every picture the change that it looks at closely.
 */
export function storyOf({
  events,
  steps,
  excursions,
}: Pick<MeasureResult, 'events' | 'steps' | 'excursions'>): Story | null {
  const first = (kinds: readonly EventResult['kind'][]): Story | undefined =>
    kinds.flatMap((kind) => eventsOf(events, kind))[0];
  const told =
    first(failures) ?? first(['transfer']) ?? farthest(steps) ?? first(beginnings) ?? excursionOf(excursions);
  return told ?? first(['inrush']) ?? null;
}

/** Of one kind, the longest first where they have a length. */
function eventsOf(events: readonly EventResult[], kind: EventResult['kind']): Story[] {
  const lengthS = (event: EventResult): number => ('durationS' in event ? event.durationS.value : 0);
  return events
    .map((event) => ({ kind: 'event', event }) as const)
    .filter(({ event }) => event.kind === kind)
    .sort((a, b) => lengthS(b.event) - lengthS(a.event));
}

function farthest(steps: readonly StepResult[]): Story | undefined {
  const reach = ({ beforeV, extremeV }: StepResult): number => Math.abs(extremeV.value - beforeV.value);
  return steps
    .map((step) => ({ kind: 'step', step }) as const)
    .sort((a, b) => reach(b.step) - reach(a.step))[0];
}

function excursionOf(excursions: readonly ExcursionResult[]): Story | undefined {
  return excursionKinds.flatMap((kind) =>
    excursions
      .map((excursion) => ({ kind: 'excursion', excursion }) as const)
      .filter(({ excursion }) => excursion.kind === kind),
  )[0];
}
