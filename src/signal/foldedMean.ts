import { RUN_SAMPLES } from './recordParts.ts';
import type { Residual } from './residual.ts';
import { median } from './statistics.ts';

/** Means over the cycle, with how far they can be trusted. */
interface FoldedMean {
  /** Shape bins, bin b covering phases b/bins to (b+1)/bins of a cycle; 0 where no sample fell. */
  readonly bins: Float64Array;
  /** Mean of count·bin² over the bins: for white noise of deviation σ about σ². */
  readonly meanSquare: number;
}

/**
 * A record folded onto one cycle.
 *
 * @param record - what a fit leaves, or any other record; NaN marks a missing sample.
 * @param omega - radians a sample.
 * @param phaseRad - phase of the record's centre sample.
 * @param binCount - ≥ 1.
 */
export function foldedMean(record: Residual, omega: number, phaseRad: number, binCount: number): FoldedMean {
  const sums = new Float64Array(binCount);
  const counts = new Uint32Array(binCount);
  const centre = (record.length - 1) / 2;
  const room = new Float64Array(RUN_SAMPLES);
  for (let from = 0; from < record.length; from += RUN_SAMPLES) {
    const run = record.stretch(from, Math.min(record.length, from + RUN_SAMPLES), room);
    const cycles = (omega * (from - centre) + phaseRad) / (2 * Math.PI);
    addToBins(
      sums,
      counts,
      run,
      (cycles - Math.floor(cycles)) * binCount,
      (omega / (2 * Math.PI)) * binCount,
    );
  }
  let square = 0;
  let filled = 0;
  for (let bin = 0; bin < binCount; bin++) {
    if (counts[bin] === 0) continue;
    square += sums[bin]! ** 2 / counts[bin]!;
    sums[bin]! /= counts[bin]!;
    filled++;
  }
  return { bins: sums, meanSquare: square / Math.max(1, filled) };
}

/** @param place - of the first sample, in bins; each sample stands a step after the one before. */
function addToBins(
  sums: Float64Array,
  counts: Uint32Array,
  run: Float64Array,
  place: number,
  step: number,
): void {
  for (let i = 0; i < run.length; i++) {
    const x = run[i]!;
    if (Number.isNaN(x)) continue;
    const bin = Math.floor(place + step * i) % sums.length;
    sums[bin]! += x;
    counts[bin]!++;
  }
}

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
