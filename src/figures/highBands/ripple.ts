/** A line of the ripple. */
export interface RippleLine {
  /** In multiples of the fundamental from the ripple's frequency: 0 the carrier, ±1, ±2 … its sidebands. */
  readonly offset: number;
  readonly frequencyHz: number;
  /** In U. */
  readonly rms: number;
}

/** What a switching converter leaves on its output. */
export interface Ripple {
  /** The middle of the cluster of lines, which is the carrier's own place even where the carrier is missing. */
  readonly frequencyHz: number;
  /** Half-width within which that frequency lies. */
  readonly frequencyWithinHz: number;
  /** Of carrier and sidebands together, noise taken off, in U. */
  readonly rms: number;
  /** Standard deviation that noise gives `rms`, in U. */
  readonly rmsDeviation: number;
  /** The lines that stand out, by offset; null where the record is too short to part them. */
  readonly lines: readonly RippleLine[] | null;
}
