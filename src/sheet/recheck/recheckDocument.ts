import type { Notice } from '../../base/notice.ts';

/** The JSON of `recheck --json`. */
export interface RecheckDocument {
  readonly schema: 'sineassay/recheck@1';
  readonly sheet: string;
  /** Captures that were measured again; empty: the sheet was checked against itself alone. */
  readonly captures: readonly string[];
  readonly same: boolean;
  /** What differs, each in a sentence. */
  readonly differences: readonly Notice[];
}
