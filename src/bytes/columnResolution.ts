import { isNoValueNumber } from './isNoValueNumber.ts';
import { printedResolution } from './printedResolution.ts';
import { sampleLines } from './sampleLines.ts';
import { splitCells } from './splitCells.ts';
import type { TableShape } from './table.ts';
import type { TextAccess } from './textAccess.ts';

const SAMPLE_LINES = 64;

/**
 * The value of the last digit that a column prints, learnt from rows spread over the body.
 *
 * @param column - 0-based column of the file.
 * @returns 0 where no cell shows one.
 * @remarks Of the large numbers only, since an exponent makes small ones finer; the finest of those,
 * since some writers drop zeros at the end.
 */
export function columnResolution(text: TextAccess, table: TableShape, column: number): number {
  const tokens = sampleLines(text, SAMPLE_LINES, table.bodyFrom)
    .map((line) => splitCells(line, table.dialect.delimiter)[column] ?? '')
    .map((token) => ({
      size: Math.abs(Number(token.replace(',', '.'))),
      resolution: printedResolution(token),
    }))
    .filter(({ size, resolution }) => size >= 0 && !isNoValueNumber(size) && resolution > 0);
  const largest = tokens.reduce((most, { size }) => Math.max(most, size), 0);
  const finest = tokens
    .filter(({ size }) => size >= largest / 2)
    .reduce((least, { resolution }) => Math.min(least, resolution), Number.POSITIVE_INFINITY);
  return Number.isFinite(finest) ? finest : 0;
}
