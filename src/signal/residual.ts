import { log2 } from '../base/elementary.ts';
import { type HarmonicSeries, sampleCycle } from './harmonicSeries.ts';
import { middleRange, RUN_SAMPLES } from './recordParts.ts';

/** What a fit leaves of a record: sample − series; NaN where the sample is missing. */
export interface Residual {
  /** Samples of the record, N. */
  readonly length: number;
  /**
   * Samples from ≤ n < to of it, 0 ≤ from ≤ to ≤ N. Not to be changed: it may be a view.
   *
   * @param room - shape to − from or more, to work them out in, so that a walk along the record needs it once.
   */
  stretch(from: number, to: number, room?: Float64Array): Float64Array;
}

/** A residual that is held in memory. */
export function storedResidual(values: Float64Array): Residual {
  return { length: values.length, stretch: (from, to) => values.subarray(from, to) };
}

/** Part of a residual, of the samples start ≤ n < end. */
export function residualPart(residual: Residual, start: number, end: number): Residual {
  return {
    length: end - start,
    stretch: (from, to, room) => residual.stretch(start + from, start + to, room),
  };
}

/** A residual in another unit. @param factor - of the values, > 0. */
export function scaledResidual(residual: Residual, factor: number): Residual {
  return {
    length: residual.length,
    stretch: (from, to, room) => {
      const left = residual.stretch(from, to, room);
      // A stored residual gives a view of itself, which stays as it is.
      const scaled = room === undefined ? new Float64Array(to - from) : room.subarray(0, to - from);
      for (let n = 0; n < scaled.length; n++) scaled[n] = factor * left[n]!;
      return scaled;
    },
  };
}

/** Points of the cycle that a long record's series is looked up in; a power of two. */
const POINTS = 2 ** 14;

/**
 * A residual that is worked out whenever a stretch of it is asked for, so that a long record needs no second array.
 *
 * @param samples - shape N, of the record.
 * @param series - fitted; u = 0 at the record's centre.
 * @param omega - radians a sample.
 * @remarks The series is read between 16384 points of its cycle by straight lines: off by (πk/16384)²/2 of order k at
 * most, 5e-5 for order 50.
 */
export function seriesResidual(samples: Float64Array, series: HarmonicSeries, omega: number): Residual {
  // Few fits on the way to the last are asked for their residual.
  let sampled: Float64Array | null = null;
  const centre = (samples.length - 1) / 2;
  const step = (omega / (2 * Math.PI)) * POINTS;
  const stretch = (from: number, to: number, room?: Float64Array): Float64Array => {
    sampled ??= closedCycle(series);
    const cycle = sampled;
    const left = room === undefined ? new Float64Array(to - from) : room.subarray(0, to - from);
    for (let start = from; start < to; start += RUN_SAMPLES) {
      const end = Math.min(to, start + RUN_SAMPLES);
      // The phase starts anew with each run, so that its whole points stay small integers.
      const turned = step * (start - centre);
      const place = turned - POINTS * Math.floor(turned / POINTS);
      leave(left.subarray(start - from, end - from), samples.subarray(start, end), { cycle, place, step });
    }
    return left;
  };
  return { length: samples.length, stretch };
}

/** The series at the points of its cycle, and at the first once more. */
function closedCycle(series: HarmonicSeries): Float64Array {
  const cycle = new Float64Array(POINTS + 1);
  cycle.set(sampleCycle(series, POINTS));
  cycle[POINTS] = cycle[0]!;
  return cycle;
}

interface SeriesRun {
  /** Of `closedCycle`. */
  readonly cycle: Float64Array;
  /** Of the first sample, in points; each stands a step after the one before. */
  readonly place: number;
  readonly step: number;
}

function leave(left: Float64Array, samples: Float64Array, { cycle, place, step }: SeriesRun): void {
  for (let n = 0; n < samples.length; n++) {
    // Not counted on from the sample before: a processor then works at several samples at once.
    const at = place + step * n;
    const whole = at | 0;
    const point = whole & (POINTS - 1);
    const before = cycle[point]!;
    left[n] = samples[n]! - (before + (at - whole) * (cycle[point + 1]! - before));
  }
}

/**
 * The longest power of two of samples in the middle of a residual, for a spectrum.
 *
 * @param longest - samples at most.
 * @returns not to be changed: it may be a view.
 */
export function middleStretch(residual: Residual, longest: number): Float64Array {
  const size = 2 ** Math.floor(log2(Math.min(residual.length, longest)));
  const { from, to } = middleRange(residual.length, size);
  return residual.stretch(from, to);
}
