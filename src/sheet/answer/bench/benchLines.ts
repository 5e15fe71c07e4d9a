import type { BenchUnit } from '../../../bench/benchDocument.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import { holdUnits } from '../../numbers/holdUnits.ts';
import { breakLines } from '../breakLines.ts';
import { shareLines } from '../shareLines.ts';
import { terminalText } from '../terminalText.ts';
import { benchSentences } from './benchSentences.ts';
import { benchSpoken } from './benchSpoken.ts';
import { benchTable } from './benchTable.ts';

export interface BenchLinesOptions {
  /** Where the sweep's sheet was written; its line is left out without. */
  readonly sheetPath?: string;
  /** Characters a line; default 80, at least 40. */
  readonly width?: number;
}

/** Above the table; more than this and nobody reads on. */
const MOST_LINES = 14;

/** A unit's bench test for the terminal: at most 14 lines, then the sweep as a table. */
export function benchLines(told: BenchUnit, options: BenchLinesOptions = {}): readonly string[] {
  const unit = cleanTexts(told);
  const width = Math.max(options.width ?? 80, 40);
  const lines = (text: string, most: number, lead = '  ', indent = '  '): string[] =>
    breakLines(holdUnits(text), { width, most, lead, indent });
  const sheet = options.sheetPath === undefined ? [] : [`  Sheet: ${options.sheetPath}`];
  const tail = [...sheet, ...lines(benchSpoken(unit).join(' '), 3, '  Say: ', '       ')];
  const topics = benchSentences(unit);
  const granted = shareLines(
    topics.map((topic) => lines(topic, MOST_LINES).length),
    MOST_LINES - 1 - tail.length,
  );
  const middle = topics.flatMap((topic, i) => (granted[i] === 0 ? [] : lines(topic, granted[i] ?? 0)));
  const table = unit.points.length === 0 ? [] : benchTable(unit).map((row) => `  ${row}`);
  return [unit.label, ...middle, ...tail, ...table].map(terminalText);
}
