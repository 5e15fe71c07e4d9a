import { cos } from '../base/elementary/cos.ts';
import { log2 } from '../base/elementary/log2.ts';
import { spectrum } from './spectrum.ts';

export interface SpectralLine {
  /** Radians a sample. */
  readonly omega: number;
  /** RMS in the unit of the samples. */
  readonly rms: number;
  /** Its bin's power over the mean of all bins: about ln N for the highest bin of white noise. */
  readonly prominence: number;
}

/**
 * The strongest line of a record's spectrum above a given frequency.
 *
 * Hann window over the longest power of two in the middle of the record; the line's power is the sum of its
 * bin and two on either side, over the window's noise bandwidth of 1.5 bins.
 *
 * @param samples - shape N, N ≥ 16; NaN is read as 0. Not changed.
 * @param aboveOmega - radians a sample.
 * @returns the line, or null where no bin lies above.
 * @see F. J. Harris, Proc. IEEE 66(1), 1978, 51–83: equivalent noise bandwidth of the Hann window.
 */
export function strongestLine(samples: Float64Array, aboveOmega: number): SpectralLine | null {
  const size = 2 ** Math.floor(log2(samples.length));
  if (size < 16) return null;
  const from = (samples.length - size) >> 1;
  const windowed = new Float64Array(size);
  for (let n = 0; n < size; n++) {
    const x = samples[from + n]!;
    if (!Number.isNaN(x)) windowed[n] = x * (0.5 - 0.5 * cos((2 * Math.PI * n) / size));
  }
  const { re, im } = spectrum(windowed);
  const power = re.map((x, k) => x * x + im[k]! ** 2);
  const first = Math.max(3, Math.ceil((aboveOmega * size) / (2 * Math.PI)) + 2);
  let best = -1;
  let total = 0;
  for (let k = first; k < power.length - 2; k++) {
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
    omega: (2 * Math.PI * (moment / line)) / size,
    // One-sided line: Σ|X|² over the main lobe = A²/4 · N · Σw² with Σw² = 3N/8, and rms² = A²/2.
    rms: Math.sqrt((line * 2) / (size * ((3 * size) / 8))),
    prominence: power[best]! / (total / Math.max(1, power.length - 2 - first)),
  };
}
