/** How rows become evenly spaced samples. */
export type RowArrangement =
  /** Row i is sample i. */
  | { readonly kind: 'as read' }
  /** Sample k is row rowOfSample[k]; −1 where no row belongs: a gap. */
  | { readonly kind: 'placed'; readonly rowOfSample: Int32Array }
  /** The same where the file keeps rows only on change: every sample has a row, repeated until the next. */
  | { readonly kind: 'held'; readonly rowOfSample: Int32Array }
  /** Rows lie unevenly, so long after the first, ascending; samples lie on the straight lines between. */
  | { readonly kind: 'resampled'; readonly offsetsS: Float64Array };

/** One even time base, and how the rows are laid on it. */
export interface TimeBase {
  readonly startS: number;
  readonly intervalS: number;
  readonly sampleCount: number;
  readonly arrangement: RowArrangement;
  /** Whether the stamps are coarser than the samples, so that no single step tells the interval. */
  readonly isCoarse: boolean;
  /** Of rounded stamps: what the interval may be off by, each way, over the interval. */
  readonly intervalWithin?: number;
}
