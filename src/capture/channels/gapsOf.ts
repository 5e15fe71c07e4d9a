import type { SampleRange } from '../capture.ts';

/** The runs of NaN in a channel: ascending, disjoint, half-open. */
export function gapsOf(samples: Float64Array): SampleRange[] {
  const gaps: SampleRange[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (!Number.isNaN(samples[i]!)) continue;
    const from = i;
    while (i < samples.length && Number.isNaN(samples[i]!)) i++;
    gaps.push({ from, to: i });
  }
  return gaps;
}
