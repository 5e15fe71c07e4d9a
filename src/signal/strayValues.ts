import { RUN_SAMPLES } from './recordParts.ts';
import { extremes, orderStatistic } from './statistics.ts';

/** Values looked at for what is usual, about. */
const LOOKS = 20_000;
/** Of the values, at either end: what is usual lies between. */
const UNUSUAL_SHARE = 0.01;
/** Two at either end. */
const LEAST_VALUES = 2 / UNUSUAL_SHARE;
/** Ranges of what is usual: farther off nothing can be that a converter saw beside a wave, by two or three codes. */
const IMPOSSIBLE_RANGES = 100;
/** Of the samples: more are no damage but what was recorded. */
const MOST_SHARE = 0.01;
/** Values far off that a record may hold by damage, wherever they stand. */
const FEW = 3;
/** Of the samples: so many it may hold where they stand at random. A pulse that belongs to the wave comes every cycle. */
const MOST_FAR_SHARE = 0.002;
/** By how much the ways between a pulse and the next but one may differ, where there are two a cycle. */
const REGULAR_WITHIN = 0.1;
/** Ranges of what is usual that they stand away from their neighbours. */
const APART_RANGES = 0.3;
/** Samples between two of them, at least: a disturbance that was really seen lasts for more than one. */
const LEAST_APART = 4;

/**
 * Single values that no record holds by itself, as a damaged cell of a file makes them: farther from the usual values
 * than these are from each other, alone among their neighbours, and three or fewer, or up to two in a thousand where
 * they come at no regular times; or a hundred times as far, and no more than one in a hundred.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns their places, ascending; none in a record that stands still but for single values.
 * @remarks Usual is what lies between the first and the last hundredth of the values.
 */
export function strayValues(samples: Float64Array): readonly number[] {
  const usual = usualValues(samples);
  if (usual === null) return [];
  const { low, high } = usual;
  const range = high - low;
  const far = placesBeyond(samples, low - range, high + range, MOST_SHARE * samples.length);
  if (far === null) return [];
  const isImpossible = (n: number): boolean =>
    !(samples[n]! > low - IMPOSSIBLE_RANGES * range && samples[n]! < high + IMPOSSIBLE_RANGES * range);
  const seen = far.filter((n) => !isImpossible(n));
  // The last of a wave that breaks off at its crest may stand beyond what is usual, but not away from the one before.
  const isAlone = (n: number): boolean =>
    [n - 1, n + 1].every((at) => !(Math.abs(samples[n]! - samples[at]!) < APART_RANGES * range));
  const isSingle =
    far.every((n, i) => i === 0 || n - far[i - 1]! >= LEAST_APART) && seen.every((n) => isAlone(n));
  const isDamage = seen.length <= FEW || (seen.length <= MOST_FAR_SHARE * samples.length && !isRegular(seen));
  return isSingle && isDamage ? far : far.filter(isImpossible);
}

/** Whether places follow each other as the pulses of a wave do, one or two a cycle. @param places - four or more. */
function isRegular(places: readonly number[]): boolean {
  const { min, max } = extremes(Float64Array.from(places.slice(2), (n, i) => n - places[i]!));
  return max - min <= REGULAR_WITHIN * max;
}

/** The first and the last hundredth of the values; null where they are one, or too few to tell. */
function usualValues(samples: Float64Array): { readonly low: number; readonly high: number } | null {
  const values = sampleFinite(samples, LOOKS);
  if (values.length < LEAST_VALUES) return null;
  const cut = Math.ceil(UNUSUAL_SHARE * values.length);
  const low = orderStatistic(values, cut);
  const high = orderStatistic(values, values.length - 1 - cut);
  return high > low ? { low, high } : null;
}

/** Null where there are more than so many. */
function placesBeyond(samples: Float64Array, low: number, high: number, most: number): number[] | null {
  const places: number[] = [];
  for (let from = 0; from < samples.length; from += RUN_SAMPLES) {
    addPlaces(places, samples, from, Math.min(samples.length, from + RUN_SAMPLES), low, high);
    if (places.length > most) return null;
  }
  return places;
}

function addPlaces(
  places: number[],
  samples: Float64Array,
  from: number,
  to: number,
  low: number,
  high: number,
): void {
  for (let n = from; n < to; n++) if (samples[n]! < low || samples[n]! > high) places.push(n);
}

/**
 * Present samples from evenly spaced places of a record: some ten thousand tell a quantile as well as millions.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param looks - places, about: all where N is less, under twice as many else.
 */
export function sampleFinite(samples: Float64Array, looks: number): Float64Array {
  const stride = Math.max(1, Math.floor(samples.length / looks));
  const seen = new Float64Array(Math.ceil(samples.length / stride));
  let count = 0;
  for (let n = 0; n < samples.length; n += stride) {
    if (!Number.isNaN(samples[n]!)) seen[count++] = samples[n]!;
  }
  return seen.subarray(0, count);
}

/**
 * The size that all but a hundredth of |v| stays under: of the peak, also where most of the record rests at zero.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns in the unit of the samples; 0 where nothing is present.
 */
export function usualPeak(samples: Float64Array): number {
  const sizes = sampleFinite(samples, LOOKS).map(Math.abs).sort();
  return sizes[Math.floor(0.99 * sizes.length)] ?? 0;
}
