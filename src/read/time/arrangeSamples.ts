/**
 * A channel's rows as evenly spaced samples.
 *
 * @param values - one a row, NaN where missing. Not changed; returned itself where rows are samples.
 * @returns shape timeBase.sampleCount, NaN in gaps.
 */
export function arrangeSamples(
  values: Float64Array,
  timeBase: TimeBase,
  stamps: Float64Array | null,
): Float64Array {
  const { arrangement, sampleCount } = timeBase;
  switch (arrangement.kind) {
    case 'as read':
      return values;
    case 'placed':
    case 'held': {
      const { rowOfSample } = arrangement;
      return Float64Array.from(rowOfSample, (row) => (row < 0 ? Number.NaN : values[row]!));
    }
    case 'resampled': {
      const present = stamps === null ? values : values.filter((_, row) => !Number.isNaN(stamps[row]!));
      return resampleLinearly(arrangement.offsetsS, present, timeBase.intervalS, sampleCount);
    }
  }
}

/** How rows become evenly spaced samples. */
type RowArrangement =
  /** Row i is sample i. */
  | { readonly kind: 'as read' }
  /** Sample k is row rowOfSample[k]; −1 where no row belongs: a gap. */
  | { readonly kind: 'placed'; readonly rowOfSample: Int32Array }
  /** The same where the file keeps rows only on change: every sample has a row, repeated until the next. */
  | { readonly kind: 'held'; readonly rowOfSample: Int32Array }
  /** Rows lie unevenly, so long after the first, ascending; samples lie on the straight lines between. */
  | { readonly kind: 'resampled'; readonly offsetsS: Float64Array };

/** One even time base, and how the rows are laid on it. */
export interface TimeBase {
  readonly startS: number;
  readonly intervalS: number;
  readonly sampleCount: number;
  readonly arrangement: RowArrangement;
  /** Whether the stamps are coarser than the samples, so that no single step tells the interval. */
  readonly isCoarse: boolean;
  /** Of rounded stamps: what the interval may be off by, each way, over the interval. */
  readonly intervalWithin?: number;
}

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

/**
 * Values on the straight lines between samples that lie unevenly in time.
 *
 * @param timesS - shape N, ascending, finite, from 0.
 * @param values - shape N, NaN where missing: a line that ends in one is missing too.
 * @returns shape count, at i · intervalS.
 */
function resampleLinearly(
  timesS: Float64Array,
  values: Float64Array,
  intervalS: number,
  count: number,
): Float64Array {
  const samples = new Float64Array(count);
  let left = 0;
  for (let i = 0; i < count; i++) {
    const at = Math.min(i * intervalS, timesS.at(-1)!);
    while (left < timesS.length - 2 && timesS[left + 1]! <= at) left++;
    const width = timesS[left + 1]! - timesS[left]!;
    const share = width > 0 ? (at - timesS[left]!) / width : 0;
    samples[i] = values[left]! + share * (values[left + 1]! - values[left]!);
  }
  return samples;
}
