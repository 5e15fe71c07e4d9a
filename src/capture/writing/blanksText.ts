import { rowsOf } from './rowsOf.ts';
import { timeCells } from './timeCells.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/** Columns lined up with runs of blanks, the comment after a number sign, no header, time in s. */
export function blanksText(capture: WrittenCapture): string[] {
  const columns = [timeCells(capture, 1), ...valueCells(capture)].map((cells) => {
    const width = cells.reduce((most, cell) => Math.max(most, cell.length), 0);
    return cells.map((cell) => cell.padStart(width));
  });
  return [...(capture.comment === undefined ? [] : [`# ${capture.comment}`]), ...rowsOf(columns, '   ')];
}
