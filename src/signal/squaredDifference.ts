import { fourier, powerOfTwoAtLeast } from './spectrum.ts';

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
