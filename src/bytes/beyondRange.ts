import { isNoValueNumber } from './isNoValueNumber.ts';

const MARK = /^([+-]?)(inf(inity)?|\u221e|\d\.#inf\w*|ol|over ?load|over ?flow|over ?range|clipped)$/i;
/** SCPI's not-a-number says nothing of a range. */
const NOT_A_NUMBER = 9.91e37;

/**
 * What a cell without a value says of the range: +∞ where it means "beyond it" (`inf`, `∞`, `OL`, 9.9E37), −∞ where
 * it says that with a minus, else NaN. Many writers have one mark for both ends.
 */
export function beyondRange(cell: string): number {
  const token = cell.trim().replace('\u2212', '-');
  const match = MARK.exec(token);
  if (match !== null) return match[1] === '-' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const value = token === '' ? 0 : Number(token.replace(',', '.'));
  if (!isNoValueNumber(value) || value === NOT_A_NUMBER) return Number.NaN;
  return value < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
}
