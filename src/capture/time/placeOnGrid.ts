import type { TimeBase } from './rowArrangement.ts';

/** Which steps a grid may have. */
export interface GridKind {
  /** Share of the steps that must be single ones. */
  readonly leastSingle: number;
  readonly mostSamplesARow: number;
}

/** Rows that are lost: with more holes than this, they were left out on purpose. */
const LOST_ROWS: GridKind = { leastSingle: 0.9, mostSamplesARow: 4 };
/** Of the interval: what a stamp may stray from its place. */
const STRAY = 0.15;

/**
 * Lays rows on an even grid by their stamps where the steps are whole multiples of one interval: rows
 * that are missing leave a gap, rows without a stamp (malformed, blank) take the place between their
 * neighbours if there is one.
 *
 * @param stamps - never falling, NaN where missing.
 * @param step - the interval, roughly.
 * @param resolution - the last printed digit of the stamps.
 * @returns null where the stamps lie on no such grid.
 */
export function placeOnGrid(
  stamps: Float64Array,
  step: number,
  resolution: number,
  kind: GridKind = LOST_ROWS,
): TimeBase | null {
  const first = stamps.findIndex((stamp) => !Number.isNaN(stamp));
  const start = stamps[first]!;
  const tolerance = Math.max(STRAY * step, resolution);
  const places = new Float64Array(stamps.length).fill(-1);
  let place = 0;
  let stamp = start;
  let steps = 0;
  let singles = 0;
  places[first] = 0;
  for (let row = first + 1; row < stamps.length; row++) {
    const rise = stamps[row]! - stamp;
    if (Number.isNaN(rise)) continue;
    const multiple = Math.round(rise / step);
    if (multiple < 1 || Math.abs(rise - multiple * step) > Math.max(tolerance, 1e-3 * rise)) return null;
    steps++;
    if (multiple === 1) singles++;
    place += multiple;
    stamp = stamps[row]!;
    places[row] = place;
  }
  const sampleCount = place + 1;
  if (singles < kind.leastSingle * steps || sampleCount > kind.mostSamplesARow * stamps.length) return null;
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
