export interface WaveRecord {
  readonly startS: number;
  readonly intervalS: number;
  /** NaN where the file holds no value. */
  readonly samples: Float64Array;
}

/** A stretch of a wave for a picture of so many columns: shapes M each; NaN where there is no value. */
export interface WaveColumns {
  /** The columns' middles, ascending. */
  readonly timeS: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Fewer samples a column than this are shown one by one. */
const LEAST_A_COLUMN = 2;

/**
 * The lowest and the highest value in each column of a stretch of time, none left out; where samples are few, the
 * samples themselves, with the one before and the one after the stretch.
 *
 * @param count - of columns, at least 1.
 */
export function waveColumns(record: WaveRecord, fromS: number, toS: number, count: number): WaveColumns {
  const { startS, intervalS, samples } = record;
  const place = (timeS: number): number => (timeS - startS) / intervalS;
  const first = Math.max(0, Math.floor(place(fromS)));
  const last = Math.min(samples.length - 1, Math.ceil(place(toS)));
  if (last - first + 1 < LEAST_A_COLUMN * count) {
    const values = samples.slice(first, Math.max(first, last + 1));
    return { timeS: values.map((_, i) => startS + (first + i) * intervalS), low: values, high: values };
  }
  const edge = (column: number): number =>
    Math.min(last + 1, Math.max(first, Math.ceil(place(fromS + ((toS - fromS) * column) / count))));
  const timeS = new Float64Array(count);
  const low = new Float64Array(count).fill(Number.NaN);
  const high = new Float64Array(count).fill(Number.NaN);
  for (let column = 0; column < count; column++) {
    timeS[column] = fromS + ((toS - fromS) * (column + 0.5)) / count;
    // The outermost samples belong to the outermost columns.
    const from = column === 0 ? first : edge(column);
    const to = column === count - 1 ? last + 1 : edge(column + 1);
    for (let n = from; n < to; n++) {
      const value = samples[n]!;
      if (!(value >= low[column]!)) low[column] = Number.isNaN(value) ? low[column]! : value;
      if (!(value <= high[column]!)) high[column] = Number.isNaN(value) ? high[column]! : value;
    }
  }
  return { timeS, low, high };
}

/**
 * The sample nearest to a time.
 *
 * @param samples - as `waveColumns` gives a stretch so short that it shows the samples themselves.
 * @returns null where the file holds none there.
 */
export function nearestSample({ timeS, low }: WaveColumns, atS: number): number | null {
  let nearest = 0;
  for (let i = 1; i < timeS.length; i++) {
    if (Math.abs(timeS[i]! - atS) < Math.abs(timeS[nearest]! - atS)) nearest = i;
  }
  const value = low[nearest];
  return value === undefined || Number.isNaN(value) ? null : value;
}

/** The record's own extremes with a little room, the same for every stretch of it. */
export function rangeOf({ low, high }: WaveColumns): readonly [number, number] {
  const bottom = Math.min(...low.filter((value) => !Number.isNaN(value)));
  const top = Math.max(...high.filter((value) => !Number.isNaN(value)));
  if (!(bottom <= top)) return [-1, 1];
  const room = 0.06 * (top - bottom) || 1;
  return [bottom - room, top + room];
}

/** The unit that times of a span of so many seconds are read in. */
export interface TimeUnit {
  readonly name: 's' | 'ms' | 'µs';
  readonly seconds: number;
  /** That tell apart a thousandth of the span. */
  readonly decimals: number;
}

export function timeUnit(spanS: number): TimeUnit {
  const [name, seconds] =
    spanS >= 2 ? (['s', 1] as const) : spanS >= 2e-3 ? (['ms', 1e-3] as const) : (['µs', 1e-6] as const);
  const exponent = Number((spanS / seconds).toExponential().split('e')[1]);
  return { name, seconds, decimals: Math.max(0, 3 - exponent) };
}

/** "12.30 ms", with the true minus sign. */
export function timeText(timeS: number, { name, seconds, decimals }: TimeUnit): string {
  return `${(timeS / seconds).toFixed(decimals).replace('-', '−')}\u00a0${name}`;
}

/** A stretch of time. */
export type Span = readonly [fromS: number, toS: number];

/** What a view keeps to: the record, and the shortest stretch worth showing. */
export interface SpanLimits {
  readonly record: Span;
  readonly shortestS: number;
}

/** The stretch moved and, where it is too long or too short, resized to keep to the limits. */
export function keptSpan([from, to]: Span, { record: [start, end], shortestS }: SpanLimits): Span {
  const length = Math.min(Math.max(to - from, shortestS), end - start);
  const middle = (from + to) / 2;
  const kept = Math.min(Math.max(middle - length / 2, start), end - length);
  return [kept, kept + length];
}

/** Shorter (factor below 1) or longer, the time `aboutS` staying where it is in the picture. */
export function zoomedSpan([from, to]: Span, factor: number, aboutS: number, limits: SpanLimits): Span {
  const length = Math.min(
    Math.max((to - from) * factor, limits.shortestS),
    limits.record[1] - limits.record[0],
  );
  const share = (aboutS - from) / (to - from);
  return keptSpan([aboutS - share * length, aboutS + (1 - share) * length], limits);
}

/** Earlier (negative) or later by a share of its length. */
export function movedSpan([from, to]: Span, share: number, limits: SpanLimits): Span {
  const by = share * (to - from);
  return keptSpan([from + by, to + by], limits);
}
