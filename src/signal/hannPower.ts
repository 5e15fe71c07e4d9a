import { log2 } from '../base/elementary.ts';
import { middleRange } from './recordParts.ts';
import { fourier } from './spectrum.ts';

/** Mean square of a record in frequency. */
export interface HannPower {
  /** Shape size/2 + 1, in U²: summed over a line's main lobe it is the line's squared RMS. */
  readonly power: Float64Array;
  /** Radians a sample between neighbouring bins. */
  readonly binOmega: number;
}

/**
 * One-sided power spectrum of the middle of a record behind a Hann window, scaled so that sums over bins are
 * mean squares.
 *
 * power[k] = 2·|X[k]|² / (M·Σw²), half of that at 0 and at half the sample rate; Σw² = 3M/8
 *
 * @param samples - shape N ≥ 16; NaN is read as 0. Not changed.
 * @param longest - samples used at most; the longest power of two that fits is taken. Default 2²⁰.
 * @returns null below 16 samples.
 * @remarks A line's two bins on either side hold all of it but 0.1 %.
 * @see F. J. Harris, Proc. IEEE 66(1), 1978, 51–83.
 */
export function hannPower(samples: Float64Array, longest: number = 2 ** 20): HannPower | null {
  const size = 2 ** Math.floor(log2(Math.min(samples.length, longest)));
  if (!(size >= 16)) return null;
  const { from } = middleRange(samples.length, size);
  const { spectrum, turns } = fourier(size);
  const windowed = new Float64Array(size);
  for (let n = 0; n < size; n++) {
    const x = samples[from + n]!;
    if (!Number.isNaN(x)) windowed[n] = x * (0.5 - 0.5 * turns[2 * n]!);
  }
  const { re, im } = spectrum(windowed);
  const scale = 2 / (size * ((3 * size) / 8));
  const power = new Float64Array(re.length);
  for (let k = 0; k < power.length; k++) power[k] = scale * (re[k]! * re[k]! + im[k]! * im[k]!);
  power[0]! /= 2;
  power[size / 2]! /= 2;
  return { power, binOmega: (2 * Math.PI) / size };
}

export interface SpectralLine {
  /** Radians a sample. */
  readonly omega: number;
  /** RMS in the unit of the samples. */
  readonly rms: number;
  /** Its bin's power over the mean of all bins: about ln N for the highest bin of white noise. */
  readonly prominence: number;
}

/**
 * The strongest line of a spectrum above a given frequency: the power of its bin and of two on either side.
 *
 * @param aboveOmega - radians a sample.
 * @returns the line, or null where no bin lies above.
 */
export function strongestLine({ power, binOmega }: HannPower, aboveOmega: number): SpectralLine | null {
  const first = Math.max(3, Math.ceil(aboveOmega / binOmega) + 2);
  const end = power.length - 2;
  let best = -1;
  let total = 0;
  for (let k = first; k < end; k++) {
    total += power[k]!;
    if (best < 0 || power[k]! > power[best]!) best = k;
  }
  if (best < 0 || !(power[best]! > 0)) return null;
  let line = 0;
  let moment = 0;
  for (let k = best - 2; k <= best + 2; k++) {
    line += power[k]!;
    moment += power[k]! * k;
  }
  return {
    omega: binOmega * (moment / line),
    rms: Math.sqrt(line),
    prominence: power[best]! / (total / Math.max(1, end - first)),
  };
}
