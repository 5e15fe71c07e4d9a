import type { MeasureResult } from '../assay/measureDocument.ts';
import { spokenLines, titleSentence } from './answerSentence.ts';
import { claimsSentence } from './claimWords.ts';
import { breakLines, courseSentence } from './courseWords.ts';
import { figureColumns, type MainFigures, mainFigures } from './figureRows.ts';
import { averageMeterPhrase } from './kindPhrase.ts';
import { findingSentence } from './limitWords.ts';
import { powerSentence } from './loadPhrase.ts';
import { bindUnits } from './numbers.ts';
import { rankNotices } from './rankNotices.ts';
import { storyOf } from './story.ts';
import { cleanText, cleanTexts, shortText, terminalText } from './text.ts';

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
    breakLines(bindUnits(text), { width, lead, indent: hang });

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

/**
 * What is worth saying beside the answer and its figures, a paragraph each, in this order: several claims, what changes
 * along the record, power, the strongest finding, what to doubt (worst first), what a meter shows.
 *
 * @param result - its texts are clean.
 */
export function answerTopics(result: MeasureResult): readonly string[] {
  const doubts = rankNotices(result.notices).map(({ message }) => message);
  return [
    isWorthListing(result) ? `Claims: ${claimsSentence(result.claims)}` : null,
    courseSentence(result),
    powerSentence(result),
    findingSentence(result.findings),
    doubts.length === 0 ? null : `Doubt: ${doubts.join(' ')}`,
    result.meter?.message ?? averageMeterPhrase(mainFigures(result)?.meter ?? null)?.sentence ?? null,
  ].filter((topic) => topic !== null);
}

/** A single claim stands in the answer; the reason why it can't be judged does too, but where something happened. */
function isWorthListing(result: MeasureResult): boolean {
  const { claims } = result;
  return claims.length > 1 || (claims[0]?.outcome === 'not judged' && storyOf(result) !== null);
}
