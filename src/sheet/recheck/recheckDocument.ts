import type { Notice } from '../../base/notice.ts';

/** The JSON of `recheck --json`. */
export interface RecheckDocument {
  readonly schema: 'sineassay/recheck@1';
  readonly sheet: string;
  /** Captures that were measured again; empty: the sheet was checked against itself alone. */
  readonly captures: readonly string[];
  /** Each capture that stands behind the sheet, by its result and by what was told. */
  readonly carried: readonly CheckedCapture[];
  /** The file is, sign by sign, the one that its data give, and no capture that was measured again gives otherwise. */
  readonly same: boolean;
  /** What differs, each in a sentence. */
  readonly differences: readonly Notice[];
}

export interface CheckedCapture {
  /** Of a bench test: whose capture it is. */
  readonly unit?: string;
  readonly file: string;
  /** Null where the sheet doesn't carry it. */
  readonly sha256: string | null;
  /** `earlier`: its results were taken over from another day, and can't be measured again from this sheet. */
  readonly state: 'measured again' | 'earlier' | 'missing';
}
