import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanText } from '../cleanText.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { holdUnits } from '../numbers/holdUnits.ts';
import { answerSentence } from './answerSentence.ts';
import { answerTopics } from './answerTopics.ts';
import { breakLines } from './breakLines.ts';
import { figureColumns } from './figureColumns.ts';
import { mainFigures } from './mainFigures.ts';
import { questionSentence } from './questionSentence.ts';
import { shareLines } from './shareLines.ts';
import { shortText } from './shortText.ts';
import { spokenLines } from './spokenLines.ts';
import { terminalText } from './terminalText.ts';

export interface AnswerOptions {
  /** Where the sheet was written; its line is left out without. */
  readonly sheetPath?: string;
  /** Characters a line; default 80, at least 40. */
  readonly width?: number;
}

/** More than this and nobody reads on. */
const mostLines = 14;

/**
 * A result for the terminal in at most 14 lines: the answer, the four figures, claims, the strongest
 * finding, what to doubt (worst first), the sheet's path, two sentences to say on camera.
 *
 * @remarks Plain text without colour. Only a path or another word longer than a line sticks out of the width.
 */
export function answerLines(result: MeasureResult, options: AnswerOptions = {}): readonly string[] {
  const clean = cleanTexts(result);
  const width = Math.max(options.width ?? 80, 40);
  const indent = '  ';
  const lines = (text: string, most: number, lead = indent, hang = indent): string[] =>
    breakLines(holdUnits(text), { width, most, lead, indent: hang });

  const label = clean.label === undefined ? '' : ` (${shortText(clean.label, 40)})`;
  const name = shortText(clean.file, width - [...label].length, 'start') + label;
  const figures = mainFigures(clean);
  const head = [
    name,
    ...lines(`${questionSentence(clean)} ${answerSentence(clean)}`, 3),
    ...(figures === null ? [] : figureColumns(figures, width - indent.length).map((row) => indent + row)),
  ];
  const tail = [
    ...(options.sheetPath === undefined ? [] : [`${indent}Sheet: ${cleanText(options.sheetPath)}`]),
    ...lines(spokenLines(clean).join(' '), 3, `${indent}Say: `, `${indent}     `),
  ];

  const topics = answerTopics(clean);
  const wanted = topics.map((topic) => lines(topic, mostLines).length);
  const granted = shareLines(wanted, mostLines - head.length - tail.length);
  const middle = topics.flatMap((topic, i) => (granted[i] === 0 ? [] : lines(topic, granted[i] ?? 0)));
  return [...head, ...middle, ...tail].map(terminalText);
}
