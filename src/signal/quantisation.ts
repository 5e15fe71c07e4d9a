import { RUN_SAMPLES } from './recordParts.ts';

/**
 * The step between neighbouring codes of a digitiser, read off the record: the smallest distance between
 * values that occur, when all of them stand on one grid of that distance.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns the step in the unit of the samples, or null where the values stand on no grid coarser than
 * 1/65536 of their range (float data, averaged or filtered records), or are few and the record doesn't flicker
 * between them: then they may be the wave's own levels, under twenty always, up to sixty-three where their spacing
 * is only nearly even, as that of levels rounded to a finer grid is.
 * @remarks A printed decimal grid counts as a grid: it bounds the resolution just the same. Codes that
 * never occur may make it a multiple of the true step, on waves with few levels only.
 */
export function quantisationStep(samples: Float64Array): number | null {
  const values = distinctValues(samples);
  if (values === null || values.length < 2) return null;
  if (values.length < FEW_VALUES && !flickers(samples))
    return values.length < 20 ? null : evenSpacing(values);
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

/** Values under which they may be the levels of a staircase. */
const FEW_VALUES = 64;

/** Samples at a code between two turns, at most, where noise carried the record there and back. */
const FLICKER_RUN = 2;
/** Of all samples: such short stays. */
const LEAST_FLICKERING = 0.015;

/**
 * Noise carries a signal to and fro between neighbouring codes from one sample to the next or the one after; a wave's own
 * levels turn back twice a cycle, and pulses, however many, stay for longer.
 */
function flickers(samples: Float64Array): boolean {
  let [last, way, turnedAt, short] = [Number.NaN, 0, Number.NEGATIVE_INFINITY, 0];
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    const step = Math.sign(x - last);
    last = x;
    if (step === 0 || Number.isNaN(step)) continue;
    if (way !== 0 && step !== way) {
      if (n - turnedAt <= FLICKER_RUN) short++;
      turnedAt = n;
    }
    way = step;
  }
  return short > LEAST_FLICKERING * samples.length;
}

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

/**
 * The spacing of values that stand evenly, each within what printing them in decimal digits leaves.
 *
 * @param values - ascending, distinct, two or more.
 * @returns in the unit of the values; null where a place between them is empty, or one stands farther off than the
 * digits explain.
 * @remarks Levels of a staircase that a finer digitiser has rounded stand off by up to half of its step: evenly only
 * by chance where they are many.
 */
export function evenSpacing(values: Float64Array): number | null {
  const [low, high] = [values[0]!, values.at(-1)!];
  const spacing = (high - low) / (values.length - 1);
  // Half a unit at either end and at the value itself.
  const allowed = Math.max(1e-9 * (high - low), Math.min(1.01 * printedUnit(values), MOST_PRINTED * spacing));
  return values.every((value, i) => Math.abs(value - low - i * spacing) <= allowed) ? spacing : null;
}

/** Of a spacing: what printing may take of its evenness. */
const MOST_PRINTED = 0.1;

/** The largest power of ten that all values are multiples of; 0 where digits go on. */
function printedUnit(values: Float64Array): number {
  const largest = Math.max(Math.abs(values[0]!), Math.abs(values.at(-1)!));
  for (let digits = -9; digits <= 12; digits++) {
    const perUnit = Number(`1e${digits}`);
    // Twelve digits of a number are those that were printed; the rest is how a computer holds it.
    const exact = Math.max(1e-12 * largest * perUnit, 1e-9);
    if (largest * perUnit < 1) continue;
    if (exact > 0.01) return 0;
    if (values.every((value) => Math.abs(value * perUnit - Math.round(value * perUnit)) < exact))
      return 1 / perUnit;
  }
  return 0;
}
