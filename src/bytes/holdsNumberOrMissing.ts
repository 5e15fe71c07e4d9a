import type { DecimalMark } from './dialect.ts';
import { isMissingMark } from './isMissingMark.ts';
import { parseNumber } from './parseNumber.ts';

/** Whether a cell fits a column of numbers: a number, or a mark for a missing one. No cell at all doesn't. */
export function holdsNumberOrMissing(cell: string | undefined, mark: DecimalMark): boolean {
  return cell !== undefined && (isMissingMark(cell) || parseNumber(cell, mark) !== null);
}
