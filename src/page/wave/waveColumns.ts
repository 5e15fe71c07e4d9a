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
