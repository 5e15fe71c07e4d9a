import type { MeasureResult } from '../../verdict/measureDocument.ts';
import type { EventResult, StepResult } from '../../verdict/stepsDocument.ts';
import { figureText } from '../numbers/figureText.ts';

/** What changes along the record, in sentences: breaks first, then load steps; null for a steady one. */
export function courseSentence({ steps, events, excursions }: MeasureResult): string | null {
  const sentences = [...events.map(eventSentence), ...steps.map(stepSentence)];
  // A step's or break's own dip is told already.
  if (sentences.length === 0) {
    for (const { kind, startS, extremeV } of excursions) {
      sentences.push(
        `A ${kind} at ${Number(startS.toPrecision(4))} s, to ${Number(extremeV.toPrecision(4))} V.`,
      );
    }
  }
  return sentences.length === 0 ? null : sentences.join(' ');
}

function stepSentence(step: StepResult): string {
  const { atS, direction, beforeV, afterV, extremeV, deviationPercent, recoveryS } = step;
  const farthest = extremeV.value < beforeV.value ? 'lowest' : 'highest';
  const deviation = deviationPercent.value === null ? '' : ` (${figureText(deviationPercent, '%')})`;
  const recovery =
    recoveryS.value === null
      ? 'not settled before the record ends'
      : `within 2 % after ${figureText(recoveryS, 's')}`;
  return `Load thrown ${direction} at ${figureText(atS, 's')}: ${figureText(beforeV, 'V')} before, ${farthest} ${figureText(extremeV, 'V')}${deviation}, then ${figureText(afterV, 'V')}, ${recovery}.`;
}

function eventSentence(event: EventResult): string {
  const at = figureText(event.kind === 'inrush' ? event.atS : event.startS, 's');
  switch (event.kind) {
    case 'transfer':
    case 'outage':
      return `${event.kind === 'transfer' ? 'Transfer' : 'Outage'} at ${at}: no voltage for ${figureText(event.durationS, 's')}.`;
    case 'start-up':
      return `Voltage starts at ${at}.`;
    case 'cut-off':
      return `Voltage goes at ${at} and stays away.`;
    case 'idle bursts':
      return `Idle bursts from ${at}: ${event.bursts} of ${figureText(event.burstS, 's')}, every ${figureText(event.intervalS, 's')}.`;
    case 'brown-out':
      return `Voltage low from ${at}: down to ${figureText(event.lowestV, 'V')} from ${figureText(event.beforeV, 'V')}, for ${event.endS.value === null ? 'at least ' : ''}${figureText(event.durationS, 's')}.`;
    case 'hiccup':
      return `Voltage lost ${event.count} times from ${at}, every ${figureText(event.periodS, 's')}.`;
    case 'failed start':
      return `Voltage starts at ${at} and is gone again at ${figureText(event.endS, 's')}.`;
    case 'inrush':
      return `Inrush at ${at}: peak ${event.clipped ? 'at least ' : ''}${figureText(event.peakA, 'A')}.`;
  }
}
