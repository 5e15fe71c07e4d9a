import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanText } from '../cleanText.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { holdUnits } from '../numbers/holdUnits.ts';
import { answerTopics } from './answerTopics.ts';
import { breakLines } from './breakLines.ts';
import { figureColumns } from './figureColumns.ts';
import { type MainFigures, mainFigures } from './mainFigures.ts';
import { shortText } from './shortText.ts';
import { spokenLines } from './spokenLines.ts';
import { terminalText } from './terminalText.ts';
import { titleSentence } from './titleSentence.ts';

export interface AnswerOptions {
  /** Where the sheet was written; its line is left out without. */
  readonly sheetPath?: string;
  /** Characters a line; default 80, at least 40. */
  readonly width?: number;
}

/**
 * A result for the terminal, some fourteen lines: the answer, the four figures, claims, the strongest finding, what to
 * doubt (worst first), the sheet's path, two sentences to say on camera. No advice and no doubt is ever cut.
 *
 * @remarks Plain text without colour. Only a path or another word longer than a line sticks out of the width.
 */
export function answerLines(result: MeasureResult, options: AnswerOptions = {}): readonly string[] {
  const clean = cleanTexts(result);
  const width = Math.max(options.width ?? 80, 40);
  const indent = '  ';
  const lines = (text: string, lead = indent, hang = indent): string[] =>
    breakLines(holdUnits(text), { width, lead, indent: hang });

  const label = clean.label === undefined ? '' : ` (${shortText(clean.label, 40)})`;
  const name = shortText(clean.file, width - [...label].length, 'start') + label;
  const figures = mainFigures(clean);
  return [
    name,
    ...lines(titleSentence(clean)),
    ...(figures === null || isEmpty(figures)
      ? []
      : figureColumns(figures, width - indent.length).map((row) => indent + row)),
    ...answerTopics(clean).flatMap((topic) => lines(topic)),
    ...(options.sheetPath === undefined ? [] : [`${indent}Sheet: ${cleanText(options.sheetPath)}`]),
    ...lines(spokenLines(clean).join(' '), `${indent}Say: `, `${indent}     `),
  ].map(terminalText);
}

/** Nothing measured: four times "not measurable" would tell no more than the answer above them. */
function isEmpty({ rms, frequencyHz, crestFactor, thdPercent }: MainFigures): boolean {
  return [rms, frequencyHz, crestFactor, thdPercent].every(({ value }) => value === null);
}
