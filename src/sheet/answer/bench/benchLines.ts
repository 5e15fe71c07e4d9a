import type { BenchUnit } from '../../../bench/benchDocument.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import { holdUnits } from '../../numbers/holdUnits.ts';
import { breakLines } from '../breakLines.ts';
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

/** A unit's bench test for the terminal: what it comes to and what to doubt, never cut, then the sweep as a table. */
export function benchLines(told: BenchUnit, options: BenchLinesOptions = {}): readonly string[] {
  const unit = cleanTexts(told);
  const width = Math.max(options.width ?? 80, 40);
  const lines = (text: string, lead = '  ', indent = '  '): string[] =>
    breakLines(holdUnits(text), { width, lead, indent });
  const sheet = options.sheetPath === undefined ? [] : [`  Sheet: ${options.sheetPath}`];
  const tail = [...sheet, ...lines(benchSpoken(unit).join(' '), '  Say: ', '       ')];
  const middle = benchSentences(unit).flatMap((topic) => lines(topic));
  const table = unit.points.length === 0 ? [] : benchTable(unit).map((row) => `  ${row}`);
  return [unit.label, ...middle, ...tail, ...table].map(terminalText);
}
