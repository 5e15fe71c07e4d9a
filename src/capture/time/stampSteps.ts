/** How the stamps go on from each row to the next that has one. */
export interface StampSteps {
  readonly count: number;
  /** Steps of zero: the stamp repeats. */
  readonly repeats: number;
  /** Smallest and middle positive step; 0 where there is none. */
  readonly smallest: number;
  readonly median: number;
  readonly largest: number;
}

/** @param stamps - never falling, NaN where missing. */
export function stampSteps(stamps: Float64Array): StampSteps {
  const present = stamps.filter((stamp) => !Number.isNaN(stamp));
  const steps = present.subarray(1).map((stamp, i) => stamp - present[i]!);
  const rising = steps.filter((step) => step > 0).sort();
  return {
    count: steps.length,
    repeats: steps.length - rising.length,
    smallest: rising[0] ?? 0,
    median: rising[rising.length >> 1] ?? 0,
    largest: rising.at(-1) ?? 0,
  };
}
