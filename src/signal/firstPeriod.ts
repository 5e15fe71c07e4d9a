import { blockMeans } from './recordParts.ts';
import { fourier, powerOfTwoAtLeast } from './spectrum.ts';

interface PeriodGuess {
  /** Samples a period, > 0. */
  readonly periodSamples: number;
  /** Squared difference between the record and itself one period later: 0 the same, 1 unrelated. */
  readonly mismatch: number;
}

/**
 * First look at the period of any wave: the shortest lag at which the record repeats itself.
 *
 * Zero crossings are ambiguous on stepped and noisy waves, and the strongest line of a short record's
 * spectrum is a fraction of a bin off; a repeated shape is neither.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns good to about 1 % of the period, the record holding at least 1.05 of them; null where nothing repeats
 * (constant, a slow drift, less than one period).
 * @remarks A lag of two periods fits as well as one, so it takes the first dip that is nearly as deep as the
 * deepest. What remains ambiguous (a carrier under a raw pulse-width-modulated wave) shows in the harmonics.
 */
export function firstPeriod(samples: Float64Array): PeriodGuess | null {
  // 8192 points keep 1 % of a period apart for 80 cycles; longer records are looked at in their middle.
  const blockLength = Math.max(1, Math.floor(samples.length / 8192));
  const record = bridgeGaps(blockMeans(samples, blockLength));
  if (record === null) return null;
  const difference = squaredDifference(record);
  // Lags near the record's length compare a handful of samples and agree by chance.
  const lastLag = Math.floor(0.95 * record.length);
  let highest = 0;
  for (let lag = 1; lag < lastLag; lag++) highest = Math.max(highest, difference[lag]!);
  let lag = 1;
  while (lag < lastLag && difference[lag]! < 0.5 * Math.min(1, highest)) lag++;
  const dips: number[] = [];
  for (; lag < lastLag; lag++) {
    const here = difference[lag]!;
    if (here <= difference[lag - 1]! && here < difference[lag + 1]!) dips.push(lag);
  }
  if (dips.length === 0) return null;
  const deepest = Math.min(...dips.map((dip) => difference[dip]!));
  // Edges between samples leave 1 % at the true period; a carrier repeats itself to 5 % or worse.
  const deepEnough = deepest + 0.025 * (1 - Math.min(1, deepest));
  const first = dips.find((dip) => difference[dip]! <= deepEnough)!;
  // Noise cuts one dip into several: take the lowest of those that stand together.
  const group = dips.filter((dip) => dip >= 0.9 * first && dip <= 1.15 * first);
  const best = group.reduce((low, dip) => (difference[dip]! < difference[low]! ? dip : low));
  return {
    periodSamples: (best + vertexOffset(difference, best)) * blockLength,
    mismatch: difference[best]!,
  };
}

/** Where the parabola through a dip and its neighbours is lowest, from −0.5 to 0.5 of a lag. */
function vertexOffset(values: Float64Array, at: number): number {
  const before = values[at - 1]!;
  const after = values[at + 1]!;
  const bend = before - 2 * values[at]! + after;
  return bend > 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
}

/** Straight lines across missing samples, for this look only; null for a constant or empty record. */
function bridgeGaps(record: Float64Array): Float64Array | null {
  const bridged = Float64Array.from(record);
  let last = -1;
  let changes = false;
  for (let n = 0; n < record.length; n++) {
    if (Number.isNaN(record[n]!)) continue;
    if (last >= 0 && record[n] !== record[last]) changes = true;
    const from = last < 0 ? record[n]! : record[last]!;
    for (let gap = last + 1; gap < n; gap++) {
      bridged[gap] = from + ((record[n]! - from) * (gap - last)) / (n - last);
    }
    last = n;
  }
  if (last < 0 || !changes) return null;
  bridged.fill(record[last]!, last + 1);
  return bridged;
}

/**
 * How unlike a record is to itself, shifted: 0 at a lag of whole periods, about 1 for lags of noise, 2 at
 * half a period of a sine.
 *
 * d(τ) = 1/(N−τ) · Σ (x[n] − x[n+τ])² / (2·variance)
 *
 * @param samples - shape N, N ≥ 2, finite, not constant. Not changed.
 * @returns shape N; d(0) = 0.
 * @remarks By way of the autocorrelation, in N·log N. The last lags rest on few products.
 * @see A. de Cheveigné, H. Kawahara, "YIN, a fundamental frequency estimator for speech and music",
 * J. Acoust. Soc. Am. 111(4), 2002, 1917–1930, equations 6 and 7.
 */
export function squaredDifference(samples: Float64Array): Float64Array {
  const length = samples.length;
  const padded = new Float64Array(powerOfTwoAtLeast(2 * length));
  let mean = 0;
  for (const x of samples) mean += x / length;
  for (let n = 0; n < length; n++) padded[n] = samples[n]! - mean;
  const { spectrum, inverse } = fourier(padded.length);
  const { re, im } = spectrum(padded);
  for (let k = 0; k < re.length; k++) {
    re[k] = re[k]! ** 2 + im[k]! ** 2;
    im[k] = 0;
  }
  const correlation = inverse({ re, im });
  const energy = new Float64Array(length + 1);
  for (let n = 0; n < length; n++) energy[n + 1] = energy[n]! + padded[n]! ** 2;
  const total = energy[length]!;
  const difference = new Float64Array(length);
  for (let lag = 1; lag < length; lag++) {
    const both = energy[length - lag]! + total - energy[lag]!;
    const squares = Math.max(0, both - 2 * correlation[lag]!);
    difference[lag] = (squares / (length - lag)) * (length / (2 * total));
  }
  return difference;
}
