/** U+00A0: a number and its unit stay on one line. */
export const noBreakSpace = '\u00a0';

/** A number's text and its unit, held together by a no-break space; the number alone where there is no unit. */
export function withUnit(text: string, unit: string): string {
  return unit === '' ? text : text + noBreakSpace + unit;
}
