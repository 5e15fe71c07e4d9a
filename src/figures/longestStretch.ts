import type { SampleRange } from '../capture/capture.ts';

/**
 * The longest run of samples without a gap longer than allowed.
 *
 * @param samples - shape N; NaN marks a missing sample.
 * @param longestGap - samples, ≥ 0.
 * @returns the run, its ends present; empty (from = to) where nothing is present.
 */
export function longestStretch(samples: Float64Array, longestGap: number): SampleRange {
  let [bestFrom, bestTo] = [0, 0];
  let from = -1;
  let last = -1;
  for (let n = 0; n < samples.length; n++) {
    if (Number.isNaN(samples[n]!)) continue;
    if (from < 0 || n - last - 1 > longestGap) from = n;
    last = n;
    if (last + 1 - from > bestTo - bestFrom) {
      bestFrom = from;
      bestTo = last + 1;
    }
  }
  return { from: bestFrom, to: bestTo };
}
