import quickselect from 'quickselect';
import { LONG_RECORD, RUN_SAMPLES } from './recordParts.ts';

export interface Moments extends Extremes {
  readonly mean: number;
  /** Of the sample, divisor count − 1; 0 when count is 1. */
  readonly standardDeviation: number;
}

/**
 * Count, mean, standard deviation and extremes of the present samples, by two passes.
 *
 * s = √( Σ (x − mean)² / (count − 1) )
 *
 * @param samples - shape N; NaN marks a missing sample; at least one is present. Not changed.
 * @throws RangeError when no sample is present.
 * @remarks Two passes, because the one-pass Σx² − (Σx)²/N loses all digits when the mean is large
 * (NIST StRD NumAcc4).
 * @example moments([1, 2, 3]).standardDeviation // 1
 */
export function moments(samples: ArrayLike<number>): Moments {
  const { count, max, min } = extremes(samples);
  const mean = compensatedSum(samples) / count;
  let squares = 0;
  for (let n = 0; n < samples.length; n++) {
    const deviation = samples[n]! - mean;
    if (!Number.isNaN(deviation)) squares += deviation * deviation;
  }
  return { count, mean, standardDeviation: Math.sqrt(squares / Math.max(1, count - 1)), max, min };
}

/**
 * Sum that carries the rounding error of every addition along, skipping missing samples.
 *
 * @param samples - shape N, N ≥ 0; NaN marks a missing sample. Not changed.
 * @returns the sum of the present samples; error below 2 ulp of the result plus N²·2⁻¹⁰⁶ of Σ|x|; 0 when there are none.
 * @see A. Neumaier, "Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen",
 * ZAMM 54 (1974), 39–51.
 * @example compensatedSum([1, 1e100, 1, -1e100]) // 2
 */
export function compensatedSum(samples: ArrayLike<number>): number {
  let sum = 0;
  let lost = 0;
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    const next = sum + x;
    lost += Math.abs(sum) >= Math.abs(x) ? sum - next + x : x - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** Highest and lowest of the present samples. */
export interface Extremes {
  /** Present samples. */
  readonly count: number;
  readonly max: number;
  readonly min: number;
}

/**
 * Extremes and count of the present samples.
 *
 * @param samples - shape N; NaN marks a missing sample; at least one is present. Not changed.
 * @throws RangeError when no sample is present.
 */
export function extremes(samples: ArrayLike<number>): Extremes {
  const seen = { count: 0, max: Number.NEGATIVE_INFINITY, min: Number.POSITIVE_INFINITY };
  for (let from = 0; from < samples.length; from += RUN_SAMPLES) {
    widen(seen, samples, from, Math.min(samples.length, from + RUN_SAMPLES));
  }
  if (seen.count === 0) throw new RangeError('extremes of no samples');
  return seen;
}

function widen(
  seen: { count: number; max: number; min: number },
  samples: ArrayLike<number>,
  from: number,
  to: number,
): void {
  let { count, max, min } = seen;
  for (let n = from; n < to; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    count++;
    if (x > max) max = x;
    if (x < min) min = x;
  }
  seen.count = count;
  seen.max = max;
  seen.min = min;
}

/** A prime, so that the places fall on all phases of a wave. */
const LOOKS = 37;
const LOOK_SAMPLES = 2 ** 10;

/**
 * White noise of a record, from the median size of its second differences: what is left of a smooth wave
 * after differencing twice is noise, and a few edges don't move a median.
 *
 * σ = median |x[n−1] − 2x[n] + x[n+1]| / (0.6745·√6)
 *
 * @param samples - shape N; NaN marks a missing sample; N ≥ 3. Not changed.
 * @returns standard deviation in the unit of the samples, ≥ 0; 0 where the record rests on single codes.
 * @remarks Low for noise that is correlated from sample to sample, high for fewer than about 50 samples a cycle.
 * A record of more than LONG_RECORD samples is looked at in 37 places, which leaves under 1 % of chance.
 */
export function differenceNoise(samples: Float64Array): number {
  const looks = samples.length > LONG_RECORD ? LOOKS : 1;
  const length = looks === 1 ? samples.length : LOOK_SAMPLES;
  const sizes = new Float64Array(looks * length);
  let count = 0;
  for (let look = 0; look < looks; look++) {
    const from = Math.floor((look * (samples.length - length)) / Math.max(1, looks - 1));
    for (let n = from + 1; n + 1 < from + length; n++) {
      const second = samples[n - 1]! - 2 * samples[n]! + samples[n + 1]!;
      if (!Number.isNaN(second)) sizes[count++] = Math.abs(second);
    }
  }
  // √6: the norm of the weights 1, −2, 1.
  return count === 0 ? 0 : median(sizes.subarray(0, count)) / (NORMAL_MEDIAN * Math.sqrt(6));
}

/** Of |x|, x normal with a standard deviation of 1. */
export const NORMAL_MEDIAN = 0.6744897501960817;

/**
 * The middle of the sorted values; the mean of the two middle ones for an even count.
 *
 * @param values - shape N, N ≥ 1, no NaN. Not changed.
 * @throws RangeError when N = 0.
 * @example median([3, 1, 2]) // 2
 */
export function median(values: ArrayLike<number>): number {
  if (values.length === 0) throw new RangeError('median of no values');
  const parted = new Float64Array(values);
  const middle = parted.length >> 1;
  const upper = orderStatistic(parted, middle);
  if (parted.length % 2 === 1) return upper;
  // The largest of those before the middle.
  let lower = parted[0]!;
  for (let i = 1; i < middle; i++) if (parted[i]! > lower) lower = parted[i]!;
  return (lower + upper) / 2;
}

/**
 * The value that stands at a place when all are sorted, without sorting them: cost linear in N.
 *
 * @param values - shape N, no NaN. Put in another order: those before the place are then at most as large as it, those
 * behind at least.
 * @param place - 0 ≤ place < N.
 * @example orderStatistic(Float64Array.of(5, 1, 3), 1) // 3
 */
export function orderStatistic(values: Float64Array, place: number): number {
  // Its types know plain arrays alone; it only reads and writes elements.
  quickselect(values as ArrayLike<number> as number[], place);
  return values[place]!;
}
