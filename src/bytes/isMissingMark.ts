const MISSING_WORD =
  /^(|[+-]?(inf(inity)?|∞)|[+-]?nan(\(.*\))?|[+-]?\d\.#\w+|n\/?a|#n\/a|null|none|[+-]?ol|overflow|overrange|clipped|invalid|-+|\?+)$/i;

/** As `isNoValueNumber` has them. */
const NO_VALUE_NUMBER = /^(\+?9[.,]910*|[+-]?9[.,]90*)e\+?37$/i;

/**
 * Whether a cell stands for "no value here": empty, `inf`, `∞`, `nan`, 9.91E37, dashes, or anything starred
 * (`****`, `12.5*`: a value that its own writer doubts is not taken).
 */
export function isMissingMark(cell: string): boolean {
  const token = cell.trim();
  return MISSING_WORD.test(token) || NO_VALUE_NUMBER.test(token) || /^\*|^[\d.,+-]+\*+$/.test(token);
}
