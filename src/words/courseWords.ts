import type { MeasureResult } from '../assay/measureDocument.ts';
import type { StepResult } from '../assay/stepsDocument.ts';
import { answerSentence } from './answerSentence.ts';
import { eventWords } from './eventWords.ts';
import { significantText, withUnit } from './numbers.ts';
import { figureText, secondsFigureText, secondsText } from './quantities.ts';
import { changeWords, storyWords } from './storyWords.ts';
import { cleanTexts } from './text.ts';

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

/**
 * What happened in the record and how the claims about it stand, without the wave: "When the load came on, the voltage
 * fell by 8.4 %, give or take 0.6, and settled 1.2 % lower than before within 0.22 s."
 */
export function changeSentence(result: MeasureResult): string {
  const clean = cleanTexts(result);
  const story = storyWords(clean);
  return story === null ? answerSentence(clean) : `${changeWords(clean, story, story.lead)}.`;
}

/** A load step as rows of names and values, the curves that it is held against last. */
export function stepRows(step: StepResult): string[][] {
  const recovery = step.recovery.map(({ bandPercent, s }) => [
    `recovery into ±${bandPercent} %`,
    figureText(s, 's'),
  ]);
  const curves = step.curves.map(
    ({ standard, name, quantity, side, afterS, percent, limitPercent, provenance }) => [
      `${standard}, ${name}`,
      `${quantity} ${side}, for information: ${significantText(percent, 3)} % after ${significantText(afterS, 3)} s, limit ${significantText(limitPercent, 3)} %${provenance === 'memory' ? ' (from memory)' : ''}`,
    ],
  );
  return [
    ['at', figureText(step.atS, 's')],
    ['direction', `${step.direction}, by the ${step.directionBy}`],
    ['before', figureText(step.beforeV, 'V')],
    ['farthest', figureText(step.extremeV, 'V')],
    ['after', figureText(step.afterV, 'V')],
    ['deviation', figureText(step.deviationPercent, '% of nominal')],
    ['after, from before', figureText(step.afterPercent, '% of nominal')],
    ['overshoot on the way back', figureText(step.overshootPercent, '% of nominal')],
    ...recovery,
    [
      'frequency before, farthest, after',
      [step.beforeHz, step.extremeHz, step.afterHz].map((f) => figureText(f, 'Hz')).join(', '),
    ],
    [
      'THD before, during, after',
      [step.thdBeforePercent, step.thdDuringPercent, step.thdAfterPercent]
        .map((f) => figureText(f, '%'))
        .join(', '),
    ],
    ...curves,
  ];
}

/** How a paragraph is broken for a terminal. */
interface LineBreaks {
  /** Characters a line, indent included; at least 20. */
  readonly width: number;
  /** Put before the first line. */
  readonly lead: string;
  /** Put before every further line. */
  readonly indent: string;
}

/**
 * Breaks a paragraph at its blanks (never at a no-break space) into lines of a terminal; a word longer than a
 * line stands alone and sticks out, so that a path stays whole and can be copied. Nothing is cut.
 */
export function breakLines(paragraph: string, { width, lead, indent }: LineBreaks): string[] {
  const lines: string[] = [];
  let line = lead;
  let isFresh = true;
  for (const word of paragraph.split(' ')) {
    if (!isFresh && length(line) + 1 + length(word) > width) {
      lines.push(line);
      line = indent + word;
    } else {
      line += isFresh ? word : ` ${word}`;
    }
    isFresh = false;
  }
  return [...lines, line];
}

function length(text: string): number {
  return [...text].length;
}
