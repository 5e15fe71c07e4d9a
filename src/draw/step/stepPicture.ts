import type { MeasureResult } from '../../assay/measureDocument.ts';
import type { Figure } from '../../base/figure.ts';
import type { StepFinding } from '../../judge/curves/stepFindings.ts';
import type { SupplyEvent } from '../../measure/breaks/supplyEvent.ts';
import type { Excursion } from '../../measure/envelope.ts';
import type { LoadStep } from '../../measure/steps/loadStep.ts';
import { type Story, storyOf } from '../../words/story.ts';

/** What a sheet shows of a voltage that changes along its record. All times on the file's own axis. */
export interface StepPicture {
  /** Centres of the cycles, ascending; shape N. */
  readonly timeS: Float64Array;
  /** Urms(1/2), V; shape N. */
  readonly rmsHalfCycle: Float64Array;
  readonly steps: readonly PicturedStep[];
  readonly events: readonly PicturedEvent[];
  readonly curves: readonly StepCurve[];
  /** The voltage itself, at least some cycles either side of the instants; null where it was not kept. */
  readonly instantaneous: {
    /** Ascending; shape M. */
    readonly timeS: Float64Array;
    /** Shape M; NaN where there is no value. */
    readonly volts: Float64Array;
  } | null;
  /** THD of the stretches before and after the step that the sheet is about; null where not measured. */
  readonly distortion: { readonly beforePercent: Figure; readonly afterPercent: Figure } | null;
}

export type PicturedStep = Omit<LoadStep, 'directionBy' | 'settledBefore' | 'settledAfter' | 'moving'>;

export type PicturedEvent = SupplyEvent | Excursion;

/** One step held against one published curve. */
export interface StepCurve extends StepFinding {
  /** Which of `steps`. */
  readonly step: number;
}

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

/** When an event starts and ends, in seconds on the file's axis; the end null where it has none of its own. */
export function eventTimes(event: PicturedEvent): { readonly startS: number; readonly endS: number | null } {
  switch (event.kind) {
    case 'transfer':
    case 'outage':
    case 'failed start':
      return { startS: event.startS.value, endS: event.endS.value };
    case 'brown-out':
      return { startS: event.startS.value, endS: event.startS.value + event.durationS.value };
    case 'hiccup':
      return { startS: event.startS.value, endS: null };
    case 'inrush':
      return { startS: event.atS.value, endS: null };
    case 'start-up':
    case 'cut-off':
    case 'idle bursts':
      return { startS: event.startS.value, endS: null };
    default:
      return { startS: event.startS, endS: event.endS };
  }
}

/**
 * From when to when the change that a sheet is about is looked at closely, seconds on the file's axis.
 *
 * @param periodS - of one cycle, > 0.
 * @returns null where nothing changes.
 */
export function instantSpan(
  subject: StepSubject,
  periodS: number,
): { readonly fromS: number; readonly toS: number } | null {
  if (subject === null) return null;
  const { startS, endS } =
    subject.kind === 'step' ? { startS: subject.step.atS.value, endS: null } : eventTimes(subject.event);
  // A long event is looked at where it begins.
  const end = Math.min(endS ?? startS, startS + 6 * periodS);
  return { fromS: startS - cyclesBeside * periodS, toS: end + (cyclesBeside + 1) * periodS };
}

/** One cycle of a result's voltage, s: as measured, else as its nominal says, else 20 ms. */
export function periodOf({ voltage, nominal }: Pick<MeasureResult, 'voltage' | 'nominal'>): number {
  return 1 / (voltage?.frequencyHz.value ?? nominal?.frequencyHz ?? 50);
}

/** Cycles shown before the instant and after its end. */
const cyclesBeside = 3;
