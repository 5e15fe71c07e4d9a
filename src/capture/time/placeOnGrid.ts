import type { TimeBase } from './rowArrangement.ts';
import type { StampSteps } from './stampSteps.ts';

/** Share of the steps that must be single ones: with more holes, rows were left out on purpose. */
const LEAST_SINGLE = 0.9;
/** Of the interval: what a stamp may stray from its place. */
const STRAY = 0.15;
const MOST_SAMPLES_A_ROW = 4;

/**
 * Lays rows on an even grid by their stamps where the steps are whole multiples of one interval: rows
 * that are missing leave a gap, rows without a stamp (malformed, blank) take the place between their
 * neighbours if there is one.
 *
 * @param stamps - never falling, NaN where missing.
 * @returns null where the stamps lie on no such grid.
 */
export function placeOnGrid(stamps: Float64Array, steps: StampSteps, resolution: number): TimeBase | null {
  const first = stamps.findIndex((stamp) => !Number.isNaN(stamp));
  const start = stamps[first]!;
  const tolerance = Math.max(STRAY * steps.median, resolution);
  const places = new Float64Array(stamps.length).fill(-1);
  let place = 0;
  let stamp = start;
  let singles = 0;
  places[first] = 0;
  for (let row = first + 1; row < stamps.length; row++) {
    const step = stamps[row]! - stamp;
    if (Number.isNaN(step)) continue;
    const multiple = Math.round(step / steps.median);
    if (multiple < 1 || Math.abs(step - multiple * steps.median) > Math.max(tolerance, 1e-3 * step))
      return null;
    if (multiple === 1) singles++;
    place += multiple;
    stamp = stamps[row]!;
    places[row] = place;
  }
  const sampleCount = place + 1;
  if (singles < LEAST_SINGLE * steps.count || sampleCount > MOST_SAMPLES_A_ROW * stamps.length) return null;
  const interval = (stamp - start) / place;
  const rowOfSample = new Int32Array(sampleCount).fill(-1);
  for (let row = 0; row < stamps.length; row++) {
    if (places[row]! < 0) continue;
    if (Math.abs(stamps[row]! - start - places[row]! * interval) > Math.max(tolerance, STRAY * interval))
      return null;
    rowOfSample[places[row]!] = row;
  }
  return {
    startS: start,
    intervalS: interval,
    sampleCount,
    arrangement: { kind: 'placed', rowOfSample },
    isCoarse: false,
  };
}
