import type { SampleRange } from '../capture/capture.ts';
import { firstMissing } from '../signal/firstMissing.ts';

/**
 * The longest run of samples without a gap longer than allowed.
 *
 * @param samples - shape N; NaN marks a missing sample.
 * @param longestGap - samples, ≥ 0.
 * @returns the run, its ends present; empty (from = to) where nothing is present.
 */
export function longestStretch(samples: Float64Array, longestGap: number): SampleRange {
  let best: SampleRange = { from: 0, to: 0 };
  let from = presentFrom(samples, 0);
  for (let to = firstMissing(samples, from); from < samples.length; ) {
    const next = presentFrom(samples, to);
    // A short gap belongs to the run, but not at its end.
    if (next < samples.length && next - to <= longestGap) {
      to = firstMissing(samples, next);
      continue;
    }
    if (to - from > best.to - best.from) best = { from, to };
    from = next;
    to = firstMissing(samples, from);
  }
  return best;
}

/** The first present sample at or behind a place; the record's end where there is none. */
function presentFrom(samples: Float64Array, from: number): number {
  let n = from;
  while (n < samples.length && Number.isNaN(samples[n]!)) n++;
  return n;
}
