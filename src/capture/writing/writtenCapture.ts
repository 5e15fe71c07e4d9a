/** A record to be written as an oscilloscope would save it. */
export interface WrittenCapture {
  /** At least one, all of one length. */
  readonly channels: readonly [WrittenChannel, ...WrittenChannel[]];
  /** Time of sample 0. */
  readonly startS: number;
  /** Positive. */
  readonly intervalS: number;
  /** A free line that the file carries above its numbers; may hold any character but a line end. */
  readonly comment?: string;
}

export interface WrittenChannel {
  readonly name: string;
  /** As it is to stand in the file: `V`, `A`. */
  readonly unit: string;
  readonly samples: Float64Array;
}
