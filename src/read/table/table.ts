import type { Dialect } from '../text/dialect.ts';

/** One line of text that is not part of the regular body. */
export interface HeadLine {
  /** 1-based line of the file. */
  readonly line: number;
  readonly text: string;
  readonly cells: readonly string[];
}

/** Where the rows of numbers stand in a text, and what stands around them. */
export interface TableShape {
  readonly dialect: Dialect;
  /** Lines above the body, those without any content left out. */
  readonly head: readonly HeadLine[];
  /**
   * Cells that stand beside the first rows of the body, outside its columns: one entry a row that has
   * any, the body's own cells blanked.
   */
  readonly beside: readonly HeadLine[];
  /** 0-based file columns that hold numbers in the body, ascending; at least one. */
  readonly columns: readonly number[];
  /** Those of them that nearly every row fills. */
  readonly core: readonly number[];
  /** 0-based file columns that hold text in most rows: comments, clock times. */
  readonly textColumns: readonly number[];
  /** Columns of numbers printed whole, without mark or exponent, as a converter's codes are. */
  readonly wholeColumns: readonly number[];
  /**
   * 0-based file column from which on no row holds a number: where one does, its cells are shifted or doubled.
   * Words may stand there, as settings beside the first rows or a remark.
   */
  readonly looseFrom: number;
  /** Cells of a row, the empty one behind its last delimiter among them, where nearly all rows end in one; else 0. */
  readonly closedWidth: number;
  /** Offset of the body's first row in the text, and its 1-based line. */
  readonly bodyFrom: number;
  readonly bodyLine: number;
}
