/** Where the fundamental of a record crosses zero, its frequency free to wander and jump. */
export interface ZeroTrack {
  /**
   * Positions in samples, not rounded, ascending, one every half cycle, from the last zero before the record
   * to the first after it.
   */
  readonly crossings: Float64Array;
  /** 1 where the samples around show the crossing; 0 where it is carried on from the nearest that are. */
  readonly seen: Uint8Array;
}
