import type { CompareDocument, Difference } from '../../../bench/compare/compareDocument.ts';
import { cleanText } from '../../cleanText.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import { figureText } from '../../numbers/figureText.ts';
import { holdUnits } from '../../numbers/holdUnits.ts';
import { alignColumns } from '../alignColumns.ts';
import { breakLines } from '../breakLines.ts';
import { outcomeWords } from '../outcomeWords.ts';
import { shortText } from '../shortText.ts';
import { terminalText } from '../terminalText.ts';
import { compareSentence } from './compareSentence.ts';
import { differenceText, verdictWords } from './differenceText.ts';
import { isMainDifference } from './isMainDifference.ts';

export interface CompareLinesOptions {
  /** Characters a line. */
  readonly width: number;
  /** Every figure and not the main ones alone. */
  readonly all: boolean;
  readonly sheetPath?: string;
}

const indent = '  ';

/** A comparison for the terminal: which two, the sentence, a table, what to doubt. */
export function compareLines(document: CompareDocument, options: CompareLinesOptions): readonly string[] {
  const clean = cleanTexts(document);
  const { width, all, sheetPath } = options;
  const lines = (text: string): string[] => breakLines(holdUnits(text), { width, lead: indent, indent });
  const shown = clean.differences.filter((difference) => all || isMainDifference(difference));
  const { claims, notices, sameInstrument } = clean;
  const moved = claims.filter(({ a, b }) => a !== b);
  return [
    `A ${nameOf(clean.a, width)}`,
    `B ${nameOf(clean.b, width)}`,
    ...lines(compareSentence(clean)),
    ...alignColumns([['', 'A', 'B', 'B − A', ''], ...shown.map(row)]).map((line) => indent + line),
    ...moved.flatMap(({ text, a, b }) =>
      lines(`“${text}” ${outcomeWords(a)} for A and ${outcomeWords(b)} for B.`),
    ),
    ...lines(
      sameInstrument
        ? 'Taken with one instrument, as told: its gain, probe, offset and time base count once.'
        : 'Taken as of two instruments; --same-instrument says that one scope and probe at one setting took both.',
    ),
    ...notices.flatMap(({ message }) => lines(`Doubt: ${message}`)),
    ...(sheetPath === undefined ? [] : [`${indent}Sheet: ${cleanText(sheetPath)}`]),
  ].map(terminalText);
}

function row(difference: Difference): string[] {
  const { quantity, unit, a, b } = difference;
  return [
    quantity,
    figureText(a, unit),
    figureText(b, unit),
    differenceText(difference),
    verdictWords(difference),
  ];
}

function nameOf({ file, label, load }: CompareDocument['a'], width: number): string {
  const told = [label, load].filter((text) => text !== undefined).map((text) => shortText(text, 30));
  const after = told.length === 0 ? '' : ` (${told.join(', ')})`;
  return shortText(file, Math.max(20, width - 2 - after.length), 'start') + after;
}
