import { RUN_SAMPLES } from './longRecord.ts';

/**
 * The first missing sample at or behind a place.
 *
 * @param samples - shape N; NaN marks a missing sample.
 * @returns N where none is missing.
 */
export function firstMissing(samples: Float64Array, from = 0): number {
  for (let n = from; n < samples.length; n += RUN_SAMPLES) {
    const end = Math.min(samples.length, n + RUN_SAMPLES);
    const missing = missingWithin(samples, n, end);
    if (missing < end) return missing;
  }
  return samples.length;
}

function missingWithin(samples: Float64Array, from: number, to: number): number {
  let n = from;
  while (n < to && !Number.isNaN(samples[n]!)) n++;
  return n;
}
