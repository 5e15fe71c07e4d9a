import type { Figure } from '../../base/figure.ts';
import { givenText } from '../answer/givenText.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { inMilliseconds, secondsText } from '../numbers/secondsText.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { extentOf } from '../panels/extentOf.ts';
import type { PicturedEvent, PicturedStep, StepPicture } from './stepPicture.ts';
import { type StepSubject, stepSubject } from './stepSubject.ts';

/** Of nominal: what is nearer than this is the same level. */
const sameLevelPercent = 0.1;

/** The question that a sheet of a changing voltage answers. */
export function stepQuestion(subject: StepSubject): string {
  if (subject?.kind === 'step') return 'Does the voltage hold when the load changes?';
  const kind = subject?.event.kind;
  return kind === 'transfer' || kind === 'outage'
    ? 'How long is the voltage away?'
    : 'Does the voltage hold?';
}

/**
 * The answer in one sentence: "When the load came on, the voltage fell by 8.4 %, give or take 0.6, and settled
 * 1.2 % lower than before within 220 ms."
 */
export function stepSentence(picture: StepPicture): string {
  const subject = stepSubject(picture);
  if (subject === null) {
    const [low, high] = extentOf(picture.rmsHalfCycle);
    return `No load step and no break: the voltage stays between ${volts(low)} and ${volts(high)}.`;
  }
  if (subject.kind === 'event') return eventSentence(subject.event);
  return `When the load ${subject.step.direction === 'on' ? 'came on' : 'went off'}, the voltage ${stepClause(subject.step)}.`;
}

function stepClause(step: PicturedStep): string {
  const { deviationPercent, afterPercent, recoveryS, before, extreme, after } = step;
  const verb = extreme.value < before.value ? 'fell' : 'rose';
  if (deviationPercent.value === null || afterPercent.value === null) {
    return `went from ${volts(before.value)} to ${volts(extreme.value)} and settled at ${volts(after.value)}`;
  }
  const by = givenText(sizeOf(deviationPercent), '%');
  if (recoveryS.value === null) return `${verb} by ${by}, and had not settled when the record ended`;
  if (Math.abs(deviationPercent.value - afterPercent.value) < sameLevelPercent) {
    return `${verb} by ${by}, and stayed there`;
  }
  const level =
    Math.abs(afterPercent.value) < sameLevelPercent
      ? 'was back where it had been'
      : `settled ${withUnit(figureParts(sizeOf(afterPercent)).value, '%')} ${afterPercent.value < 0 ? 'lower' : 'higher'} than before`;
  return `${verb} by ${by}, and ${level} within ${secondsText(recoveryS.value, 2)}`;
}

function eventSentence(event: PicturedEvent): string {
  switch (event.kind) {
    case 'transfer':
    case 'outage': {
      const { durationS, phaseJumpDeg } = event;
      const away =
        durationS.value < 1 ? givenText(inMilliseconds(durationS), 'ms') : givenText(durationS, 's');
      return `The voltage was away for ${away}${phaseClause(phaseJumpDeg)}.`;
    }
    case 'start-up':
      return `The record starts without voltage; its first peak is ${volts(event.returnPeak.value)}.`;
    case 'cut-off':
      return `The voltage goes away at ${secondsText(event.startS.value)} and does not come back in this record.`;
    case 'idle bursts':
      return `${event.bursts} short bursts with no voltage between: the source is searching for a load.`;
    case 'brown-out':
      return `The voltage fell from ${volts(event.before.value)} to ${volts(event.lowest.value)} for ${event.endS.value === null ? 'at least ' : ''}${secondsText(event.durationS.value, 2)}.`;
    case 'hiccup':
      return `The voltage was lost ${event.count} times in this record.`;
    case 'failed start':
      return `The voltage came at ${secondsText(event.startS.value)} and was gone again ${secondsText(event.endS.value - event.startS.value, 2)} later.`;
    case 'inrush':
      return event.peakA.value === null
        ? 'The load came on with an inrush of current.'
        : `The load came on with an inrush of ${event.clipped ? 'at least ' : ''}${withUnit(significantText(event.peakA.value, 3), 'A')}.`;
    default: {
      const least = event.startSeen && event.endSeen ? '' : 'at least ';
      const went = { dip: 'dipped to', swell: 'rose to', interruption: 'broke down to' }[event.kind];
      return `The voltage ${went} ${volts(event.extreme)} for ${least}${secondsText(event.durationS, 2)}.`;
    }
  }
}

function phaseClause({ value, ...jump }: Figure): string {
  if (value === null || !('uncertainty' in jump)) return '';
  if (Math.abs(value) <= Math.max(jump.uncertainty, 1)) return ', and came back in step';
  return `, and came back ${decimalText(Math.abs(value), 0)}° ${value > 0 ? 'ahead' : 'behind'}`;
}

function sizeOf(figure: Figure & { readonly value: number }): Figure & { readonly value: number } {
  return { ...figure, value: Math.abs(figure.value) };
}

function volts(value: number): string {
  return withUnit(significantText(value, 4), 'V');
}
