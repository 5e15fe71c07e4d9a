import { RUN_SAMPLES } from './longRecord.ts';

/**
 * The values that occur in a record.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param most - how many at most, up to MOST_VALUES.
 * @returns ascending; null where they are more than `most`.
 */
export function distinctValues(samples: Float64Array, most: number = MOST_VALUES): Float64Array | null {
  const seen: SeenValues = {
    values: new Float64Array(most + 1),
    count: 0,
    places: new Int32Array(PLACES),
  };
  for (let from = 0; from < samples.length; from += RUN_SAMPLES) {
    addValues(seen, samples.subarray(from, from + RUN_SAMPLES), most);
    if (seen.count > most) return null;
  }
  return seen.values.subarray(0, seen.count).sort();
}

/** A grid of more than 16 bits would need more distinct values than this to show itself. */
const MOST_VALUES = 70_000;

/** Of the table of places; a power of two, nearly twice as many as values. */
const PLACES = 2 ** 17;

/** A set of numbers, which a JavaScript set of so many would hold each as an object. */
interface SeenValues {
  readonly values: Float64Array;
  count: number;
  /** At the place that a value's bits tell, or one of the next: its index, from 1; 0 where none is. */
  readonly places: Int32Array;
}

function addValues(seen: SeenValues, samples: Float64Array, most: number): void {
  const { values, places } = seen;
  const words = new Uint32Array(samples.buffer, samples.byteOffset, 2 * samples.length);
  for (let n = 0; n < samples.length && seen.count <= most; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    // Minus zero is no value of its own.
    const high = x === 0 ? 0 : words[2 * n + 1]!;
    // The multiplier of a linear congruential generator spreads neighbouring codes over the table.
    const mixed = Math.imul(words[2 * n]! ^ Math.imul(high, 1664525), 1664525);
    let place = (mixed ^ (mixed >>> 15)) & (PLACES - 1);
    while (places[place] !== 0 && values[places[place]! - 1] !== x) place = (place + 1) & (PLACES - 1);
    if (places[place] !== 0) continue;
    values[seen.count] = x;
    places[place] = ++seen.count;
  }
}
