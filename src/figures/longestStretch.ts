import type { SampleRange } from '../capture/capture.ts';

/**
 * The longest run of samples without a gap longer than allowed.
 *
 * @param samples - shape N; NaN marks a missing sample.
 * @param longestGap - samples, ≥ 0.
 * @returns the run, its ends present; empty (from = to) where nothing is present.
 */
export function longestStretch(samples: Float64Array, longestGap: number): SampleRange {
  let best: SampleRange = { from: 0, to: 0 };
  let from = -1;
  let last = -1;
  for (let n = 0; n < samples.length; n++) {
    if (Number.isNaN(samples[n]!)) continue;
    if (from < 0 || n - last - 1 > longestGap) from = n;
    last = n;
    if (last + 1 - from > best.to - best.from) best = { from, to: last + 1 };
  }
  return best;
}
