/** Something that a capture's head says about itself: `Sample Interval,4e-6,s`, `Coupling: DC`. */
export interface Setting {
  /** Lower case, without punctuation, blanks single: `sample interval`. */
  readonly key: string;
  /** The text in brackets behind the key, where there is one: a unit, mostly. */
  readonly keyUnit: string | null;
  /** Cells behind the key, not empty; several where the setting differs between channels. */
  readonly values: readonly string[];
  /** 1-based line of the file, 0-based column of the key. */
  readonly line: number;
  readonly column: number;
}
