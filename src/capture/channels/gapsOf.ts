import type { SampleRange } from '../capture.ts';

/** The runs of NaN in a channel, or of infinite values before it is settled what they mean: ascending, disjoint, half-open. */
export function gapsOf(samples: Float64Array): SampleRange[] {
  const gaps: SampleRange[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (!isMissing(samples[i]!)) continue;
    const from = i;
    while (i < samples.length && isMissing(samples[i]!)) i++;
    gaps.push({ from, to: i });
  }
  return gaps;
}

/** NaN or infinite: both have no difference from themselves. */
function isMissing(value: number): boolean {
  return value - value !== 0;
}
