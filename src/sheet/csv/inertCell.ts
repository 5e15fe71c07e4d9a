/** Signs that a spreadsheet starts a formula with, plain or full-width, be it after blanks and quotes. */
const formulaStart = /^(?:[\s'"\u2018-\u201f\uff02\uff07]*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r])/u;

/** A text as a cell that no spreadsheet takes for a formula: with an apostrophe in front where it might. */
export function inertCell(text: string): string {
  return formulaStart.test(text) ? `'${text}` : text;
}
