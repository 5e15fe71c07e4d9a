export type DecimalMark = '.' | ',';

/** `blanks`: any run of spaces and tabs. */
export type Delimiter = ',' | ';' | '\t' | '|' | 'blanks';

/** How a table is written. */
export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
}
