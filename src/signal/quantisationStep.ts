import { RUN_SAMPLES } from './longRecord.ts';

/**
 * The step between neighbouring codes of a digitiser, read off the record: the smallest distance between
 * values that occur, when all of them stand on one grid of that distance.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns the step in the unit of the samples, or null where the values stand on no grid coarser than
 * 1/65536 of their range (float data, averaged or filtered records), or are under twenty and the record
 * doesn't flicker between them: then they may be the wave's own levels.
 * @remarks A printed decimal grid counts as a grid: it bounds the resolution just the same. Codes that
 * never occur may make it a multiple of the true step, on waves with few levels only.
 */
export function quantisationStep(samples: Float64Array): number | null {
  const values = distinctValues(samples);
  if (values === null || values.length < 2) return null;
  if (values.length < 20 && !flickers(samples)) return null;
  const range = values.at(-1)! - values[0]!;
  const printed = 1e-6 * range;
  const distances: number[] = [];
  for (let i = 1; i < values.length; i++) {
    const distance = values[i]! - values[i - 1]!;
    if (distance > printed) distances.push(distance);
  }
  distances.sort((a, b) => a - b);
  const smallest = distances[0]!;
  if (range / smallest > 65_536) return null;
  // Exports print a few digits, so codes stand off their grid by a little: a tenth of a step is allowed.
  let onGrid = 0;
  for (const distance of distances) {
    const steps = distance / smallest;
    if (Math.abs(steps - Math.round(steps)) < 0.1) onGrid++;
  }
  if (onGrid < 0.95 * distances.length) return null;
  // Long distances average the printed digits out of the step.
  return range / Math.round(range / smallest);
}

/** A grid of more than 16 bits would need more distinct values than this to show itself. */
const MOST_VALUES = 70_000;

/** The values that occur, ascending; null where they are more than MOST_VALUES. */
function distinctValues(samples: Float64Array): Float64Array | null {
  const seen: SeenValues = {
    values: new Float64Array(MOST_VALUES + 1),
    count: 0,
    places: new Int32Array(PLACES),
  };
  for (let from = 0; from < samples.length; from += RUN_SAMPLES) {
    addValues(seen, samples.subarray(from, from + RUN_SAMPLES));
    if (seen.count > MOST_VALUES) return null;
  }
  return seen.values.subarray(0, seen.count).sort();
}

/** Of the table of places; a power of two, nearly twice as many as values. */
const PLACES = 2 ** 17;

/** A set of numbers, which a JavaScript set of so many would hold each as an object. */
interface SeenValues {
  readonly values: Float64Array;
  count: number;
  /** At the place that a value's bits tell, or one of the next: its index, from 1; 0 where none is. */
  readonly places: Int32Array;
}

function addValues(seen: SeenValues, samples: Float64Array): void {
  const { values, places } = seen;
  const words = new Uint32Array(samples.buffer, samples.byteOffset, 2 * samples.length);
  for (let n = 0; n < samples.length && seen.count <= MOST_VALUES; n++) {
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

/** Noise carries a signal to and fro between neighbouring codes; a wave's own levels turn back twice a cycle. */
function flickers(samples: Float64Array): boolean {
  let [last, way, turns] = [Number.NaN, 0, 0];
  for (const x of samples) {
    if (Number.isNaN(x)) continue;
    const step = Math.sign(x - last);
    if (step !== 0 && !Number.isNaN(step)) {
      if (way !== 0 && step !== way) turns++;
      way = step;
    }
    last = x;
  }
  return turns > 0.03 * samples.length;
}
