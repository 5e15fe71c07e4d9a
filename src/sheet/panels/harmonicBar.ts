/** One harmonic as a bar. */
export interface HarmonicBar {
  readonly order: number;
  /** Of the fundamental, 0 and up. */
  readonly percent: number;
}
