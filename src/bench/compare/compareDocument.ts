import type { AssayResult, MeasureResult } from '../../assay/measureDocument.ts';
import type { Figure } from '../../base/figure.ts';
import type { Reason, Worded } from '../../base/notice.ts';
import type { ClaimResult } from '../../judge/claims/claim.ts';
import type { WaveformKind } from '../../judge/waveform/kinds.ts';
import type { CompareNotice } from '../notices.ts';

/** The JSON of `compare --json`. Keys carry their unit; later versions add keys and rename none. */
export type CompareDocument = Worded<Comparison>;

/** Two captures held against each other, without a sentence in it but for what a document said of one. */
export interface Comparison {
  readonly schema: 'sineassay/compare@1';
  readonly a: ComparedCapture;
  readonly b: ComparedCapture;
  /** Told: one scope and probe at one setting took both, so that what they are off by is the same in both. */
  readonly sameInstrument: boolean;
  readonly kind: KindDifference;
  /** In the order in which a person asks. */
  readonly differences: readonly Difference[];
  /** Claims that both were held against. */
  readonly claims: readonly ClaimDifference[];
  readonly notices: readonly CompareNotice[];
}

/** Of a capture measured just now, or as a document carries it. */
export type ComparedResult = AssayResult | MeasureResult;

export interface ComparedCapture {
  readonly file: string;
  /** Of the capture's bytes, lower-case hexadecimal. */
  readonly sha256: string;
  readonly label?: string;
  readonly load?: string;
}

/** One figure of both captures. `a`, `b` and `difference` are in `unit`. */
export interface Difference {
  /** Where a result has it: `voltage.rmsV`, `voltage.harmonics.3`. */
  readonly key: string;
  /** In words: "RMS voltage". */
  readonly quantity: string;
  /** Empty for a ratio. */
  readonly unit: string;
  readonly a: Figure;
  readonly b: Figure;
  /** b − a; a bound counts as anything from nothing up to it. */
  readonly difference: Figure;
  /** True where the difference is larger than its uncertainty; null where that can't be said. */
  readonly significant: boolean | null;
  /** Why it can't be said, or how far the two are alike. */
  readonly reason?: Reason;
}

export interface KindDifference {
  readonly a: WaveformKind;
  readonly b: WaveformKind;
  /** Null where one is a pure and the other a distorted sine, and one of them is at the edge between the two. */
  readonly significant: boolean | null;
}

interface ClaimDifference {
  readonly text: string;
  readonly a: ClaimResult['outcome'];
  readonly b: ClaimResult['outcome'];
}
