import type { MeasureResult } from '../assay/measureDocument.ts';
import type { EventResult, ExcursionResult, StepResult } from '../assay/stepsDocument.ts';
import type { Figure, MeasuredFigure } from '../base/figure.ts';
import type { ClaimResult } from '../judge/claims/claim.ts';
import { claimsPhrase } from './claimWords.ts';
import { eventWords, givenText } from './eventWords.ts';
import { mainFigures } from './figureRows.ts';
import { kindPhrase } from './kindPhrase.ts';
import { underLoad } from './loadPhrase.ts';
import { significantText, withUnit } from './numbers.ts';
import { figureParts, secondsText } from './quantities.ts';
import { type Story, storyOf } from './story.ts';
import { capitalised } from './text.ts';

/** What every text about a result leads with, where its record tells more than a steady wave. */
interface StoryWords {
  /** What happened, without a stop: "Output away for 14.2 ms, give or take 0.3". */
  readonly lead: string;
  /** The same in short, for a card or to be said: "Output away for 14.2 ms". */
  readonly brief: string;
  /** When the wave was measured that the figures describe, as a sentence goes on: "before that". */
  readonly measuredThen: string;
  /** The same behind a name: "before the loss". */
  readonly stretch: string;
}

/** The story of a result in words; null for a wave that is steady throughout. */
export function storyWords(result: MeasureResult): StoryWords | null {
  const story = storyOf(result);
  return story === null ? null : { ...leadOf(story, result), ...stretchOf(story, result) };
}

function leadOf(story: Story, { events, steps }: MeasureResult): Pick<StoryWords, 'lead' | 'brief'> {
  switch (story.kind) {
    case 'event': {
      const { clause, phrase } = eventWords(story.event);
      const alike = events.filter(({ kind }) => kind === story.event.kind).length;
      const others = alike > 1 ? `, the ${rankName(story.event)} of ${alike}` : '';
      return { lead: capitalised(clause) + others, brief: capitalised(phrase) + others };
    }
    case 'step': {
      const when = `When the load ${story.step.direction === 'on' ? 'came on' : 'went off'}, the voltage `;
      const others = steps.length > 1 ? `, the largest of ${steps.length} steps` : '';
      return {
        lead: when + stepClause(story.step) + others,
        brief: when + fall(story.step, false) + others,
      };
    }
    case 'excursion': {
      const words = excursionWords(story.excursion);
      return { lead: words, brief: words };
    }
  }
}

/** What sets one of several events of a kind apart: the story is about the longest, else about the first. */
function rankName(event: EventResult): string {
  return 'durationS' in event ? 'longest' : 'first';
}

/** Of nominal: what is nearer than this is the same level. */
const sameLevelPercent = 0.1;

function stepClause(step: StepResult): string {
  const { deviationPercent, afterPercent, recoveryS } = step;
  const said = fall(step, true);
  if (deviationPercent.value === null || afterPercent.value === null) return said;
  if (recoveryS.value === null) return `${said}, and had not settled when the record ended`;
  if (Math.abs(deviationPercent.value - afterPercent.value) < sameLevelPercent)
    return `${said}, and stayed there`;
  const level =
    Math.abs(afterPercent.value) < sameLevelPercent
      ? 'was back where it had been'
      : `settled ${withUnit(figureParts(sizeOf(afterPercent)).value, '%')} ${afterPercent.value < 0 ? 'lower' : 'higher'} than before`;
  // A time that can't be told from none is no time to name.
  const isAtOnce = recoveryS.value <= recoveryS.uncertainty;
  return `${said}, and ${level}${isAtOnce ? '' : ` within ${secondsText(recoveryS.value, 2)}`}`;
}

/** How far a step takes the voltage: in percent of nominal, in volts where there is none. */
function fall({ deviationPercent, beforeV, extremeV, afterV }: StepResult, isFull: boolean): string {
  if (deviationPercent.value === null) {
    const way = `went from ${volts(beforeV)} to ${volts(extremeV)}`;
    return isFull ? `${way} and settled at ${volts(afterV)}` : way;
  }
  const verb = extremeV.value < beforeV.value ? 'fell' : 'rose';
  const by = sizeOf(deviationPercent);
  return `${verb} by ${isFull ? givenText(by, '%') : withUnit(figureParts(by).value, '%')}`;
}

function excursionWords({ kind, startSeen, endSeen, extremeV, durationS }: ExcursionResult): string {
  const least = startSeen && endSeen ? '' : 'at least ';
  const went = { dip: 'dipped to', swell: 'rose to', interruption: 'broke down to' }[kind];
  const extreme = withUnit(significantText(extremeV, 4), 'V');
  return `The voltage ${went} ${extreme} for ${least}${secondsText(durationS, 2)}`;
}

/** Where the stretch that the figures describe lies to what happened. */
function stretchOf(story: Story, result: MeasureResult): Pick<StoryWords, 'measuredThen' | 'stretch'> {
  const { startS, endS, noun } = placeOf(story);
  const spanS = mainFigures(result)?.spanS;
  if (spanS === undefined) return { measuredThen: 'around it', stretch: `around ${noun}` };
  // Nothing repeats: what there is is told of the event's own time.
  if (story.kind === 'event' && mainFigures(result)?.cyclesUsed === 0)
    return { measuredThen: thenOf(story.event), stretch: `with ${noun}` };
  const [from, to] = spanS;
  const middleS = (from + to) / 2;
  const edgeS = edgeShare * (to - from);
  if (from < startS - edgeS && to > endS + edgeS)
    return { measuredThen: 'over the whole record', stretch: `with ${noun}` };
  if (isAnotherBetween(middleS, { startS, endS }, result))
    return middleS < startS
      ? { measuredThen: 'earlier in the record', stretch: 'earlier in the record' }
      : { measuredThen: 'later in the record', stretch: 'later in the record' };
  if (middleS < startS) return { measuredThen: 'before that', stretch: `before ${noun}` };
  if (isOnAndOff(story)) return { measuredThen: 'while it was on', stretch: 'while the voltage was on' };
  if (middleS <= endS) return { measuredThen: 'meanwhile', stretch: `during ${noun}` };
  const isStart = story.kind === 'event' && story.event.kind === 'start-up';
  return { measuredThen: isStart ? 'from then on' : 'after that', stretch: `after ${noun}` };
}

/** A stretch may reach so far into what happened, or past it, and still lie on one side: edges are smeared by a cycle. */
const edgeShare = 0.2;

function thenOf({ kind }: EventResult): string {
  return kind === 'start-up' ? 'from then on' : kind === 'cut-off' ? 'before that' : 'meanwhile';
}

/** Whether the load changed between that stretch and what happened, so that it was another than just before or after. */
function isAnotherBetween(
  middleS: number,
  { startS, endS }: Pick<Place, 'startS' | 'endS'>,
  { steps }: MeasureResult,
): boolean {
  const [from, to] = middleS < startS ? [middleS, startS] : [endS, middleS];
  return steps.some(({ atS }) => atS.value > from && atS.value < to);
}

function isOnAndOff(story: Story): boolean {
  return story.kind === 'event' && (story.event.kind === 'hiccup' || story.event.kind === 'idle bursts');
}

interface Place {
  readonly startS: number;
  readonly endS: number;
  /** "the loss". */
  readonly noun: string;
}

const eventNouns = {
  'cut-off': 'the loss',
  hiccup: 'the losses',
  'failed start': 'the failed start',
  'brown-out': 'the brown-out',
  outage: 'the outage',
  transfer: 'the transfer',
  'start-up': 'the start',
  'idle bursts': 'the bursts',
  inrush: 'the inrush',
} as const satisfies Record<EventResult['kind'], string>;

function placeOf(story: Story): Place {
  switch (story.kind) {
    case 'step':
      return { startS: story.step.atS.value, endS: story.step.atS.value, noun: 'the load step' };
    case 'excursion': {
      const { startS, endS, kind } = story.excursion;
      return { startS, endS, noun: `the ${kind}` };
    }
    case 'event': {
      const { event } = story;
      const noun = eventNouns[event.kind];
      const startS = event.kind === 'inrush' ? event.atS.value : event.startS.value;
      // What stays away has no end in the record.
      if (event.kind === 'cut-off') return { startS, endS: Number.POSITIVE_INFINITY, noun };
      return {
        startS,
        endS: 'endS' in event ? (event.endS.value ?? Number.POSITIVE_INFINITY) : startS,
        noun,
      };
    }
  }
}

function sizeOf(figure: Figure & { readonly value: number }): Figure & { readonly value: number } {
  return { ...figure, value: Math.abs(figure.value) };
}

function volts({ value }: MeasuredFigure): string {
  return withUnit(significantText(value, 4), 'V');
}

/**
 * What happened with the claims that are about it, then the wave beside it with the others: "Output away for 14.2 ms:
 * “transfer < 10 ms” fails; before that at 300 W, a pure sine, 2.1 % distortion, give or take 0.4."
 *
 * @param result - its texts are clean.
 * @param lead - which of the story's leads.
 * @param spoken - a pure sine is called a sine, units of a load are spelled out.
 */
export function storySentence(
  result: MeasureResult,
  story: StoryWords,
  lead: string,
  spoken = false,
): string {
  const others = claimsPhrase(result.claims.filter((claim) => !isAboutChange(claim)));
  const wave = kindPhrase(result, spoken ? 'a sine' : 'a pure sine', true);
  const load = underLoad(result.loadSeen, '', spoken).replace(/[, ]+$/, '');
  const when = load === '' ? story.measuredThen : `${story.measuredThen} ${load}`;
  return `${changeWords(result, story, lead)}; ${when}, ${others === '' ? '' : `${others}: `}${wave}.`;
}

/** What happened, and how the claims about it stand; without a stop. */
export function changeWords({ claims }: MeasureResult, { brief }: StoryWords, lead: string): string {
  const about = claimsPhrase(claims.filter(isAboutChange), brief);
  return about === '' ? lead : `${lead}: ${about}`;
}

/** Whether a claim is about what a supply does on its way, not about the wave. */
export function isAboutChange({ quantity }: ClaimResult): boolean {
  return quantity === 'transferS' || quantity === 'powerW' || quantity === 'surgeS';
}
