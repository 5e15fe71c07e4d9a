import { median } from './median.ts';

/**
 * A record folded onto one cycle, each bin the median of its samples: noise averages out and an edge stays
 * sharp, since a median takes one side of it.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param omega - radians a sample.
 * @param phaseRad - phase of the record's centre sample.
 * @param binCount - ≥ 1, at most half the samples, so that few bins stay empty.
 * @returns shape binCount; a bin that no sample fell into repeats the one before.
 */
export function foldedMedian(
  samples: Float64Array,
  omega: number,
  phaseRad: number,
  binCount: number,
): Float64Array {
  const bins: number[][] = Array.from({ length: binCount }, () => []);
  const centre = (samples.length - 1) / 2;
  for (let n = 0; n < samples.length; n++) {
    if (Number.isNaN(samples[n]!)) continue;
    const cycles = (omega * (n - centre) + phaseRad) / (2 * Math.PI);
    bins[Math.min(binCount - 1, Math.floor((cycles - Math.floor(cycles)) * binCount))]!.push(samples[n]!);
  }
  const medians = new Float64Array(binCount);
  let last = median(bins.findLast((bin) => bin.length > 0) ?? [0]);
  bins.forEach((bin, i) => {
    if (bin.length > 0) last = median(bin);
    medians[i] = last;
  });
  return medians;
}
