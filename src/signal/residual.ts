import { type HarmonicSeries, sampleCycle } from './harmonicSeries.ts';

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

/** Points of the cycle that a long record's series is looked up in. */
const POINTS = 2 ** 14;
/** Samples over which the phase is counted on before it is calculated anew. */
const RUN = 4096;

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
  const cycle = new Float64Array(POINTS + 1);
  cycle.set(sampleCycle(series, POINTS));
  cycle[POINTS] = cycle[0]!;
  const centre = (samples.length - 1) / 2;
  const step = (omega / (2 * Math.PI)) * POINTS;
  const stretch = (from: number, to: number, room?: Float64Array): Float64Array => {
    const left = room === undefined ? new Float64Array(to - from) : room.subarray(0, to - from);
    for (let start = from; start < to; start += RUN) {
      const end = Math.min(to, start + RUN);
      let place = step * (start - centre);
      place -= POINTS * Math.floor(place / POINTS);
      for (let n = start; n < end; n++) {
        const point = Math.floor(place);
        const before = cycle[point]!;
        left[n - from] = samples[n]! - (before + (place - point) * (cycle[point + 1]! - before));
        place += step;
        if (place >= POINTS) place -= POINTS;
      }
    }
    return left;
  };
  return { length: samples.length, stretch };
}
