/** The middle of a record. */
export interface MiddleRange {
  /** Samples from ≤ n < to. */
  readonly from: number;
  readonly to: number;
  /** How far its centre stands behind the record's, in samples: −½ where one is of an odd, one of an even number. */
  readonly apart: number;
}

/** @param longest - samples at most; all where the record has no more. */
export function middleRange(length: number, longest: number): MiddleRange {
  const held = Math.min(length, longest);
  const from = (length - held) >> 1;
  return { from, to: from + held, apart: from + (held - length) / 2 };
}
