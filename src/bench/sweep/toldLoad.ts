import type { BenchPoint } from '../benchDocument.ts';

/** What a person tells of a capture of the sweep. */
export interface ToldLoad {
  /** Null: not told. */
  readonly loadW: number | null;
  readonly battery?: NonNullable<BenchPoint['battery']>;
  readonly note?: string;
}
