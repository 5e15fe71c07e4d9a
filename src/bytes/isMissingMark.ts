import { isNoValueNumber } from './isNoValueNumber.ts';

const MISSING_WORD =
  /^(|[+\-\u2212]?(inf(inity)?|∞)|[+-]?nan(\(.*\))?|[+-]?\d\.#\w+|n\/?a|#n\/a|null|none|[+\-\u2212]?(ol|over ?load|over ?flow|over ?range|clipped)|invalid|-+|\?+)$/i;

/**
 * Whether a cell stands for "no value here": empty, `inf`, `∞`, `nan`, 9.91E37, dashes, or anything starred
 * (`****`, `12.5*`: a value that its own writer doubts is not taken).
 */
export function isMissingMark(cell: string): boolean {
  const token = cell.trim();
  if (MISSING_WORD.test(token) || /^\*|^[\d.,+-]+\*+$/.test(token)) return true;
  return isNoValueNumber(Number(token.replace(',', '.')));
}
