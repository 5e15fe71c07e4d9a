import type { MeasureResult } from '../../verdict/measureDocument.ts';
import type { StepResult } from '../../verdict/stepsDocument.ts';
import { figureText } from '../numbers/figureText.ts';
import { secondsFigureText, secondsText } from '../numbers/secondsText.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { eventWords } from './eventWords.ts';

/** What changes along the record, in sentences: breaks first, then load steps; null for a steady one. */
export function courseSentence({ steps, events, excursions }: MeasureResult): string | null {
  const sentences = [...events.map((event) => eventWords(event).sentence), ...steps.map(stepSentence)];
  // A step's or break's own dip is told already.
  if (sentences.length === 0) {
    for (const { kind, startS, extremeV } of excursions) {
      sentences.push(
        `A ${kind} at ${secondsText(startS)}, to ${withUnit(significantText(extremeV, 4), 'V')}.`,
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
      : `within 2 % after ${secondsFigureText(recoveryS)}`;
  return `Load thrown ${direction} at ${secondsFigureText(atS)}: ${figureText(beforeV, 'V')} before, ${farthest} ${figureText(extremeV, 'V')}${deviation}, then ${figureText(afterV, 'V')}, ${recovery}.`;
}
