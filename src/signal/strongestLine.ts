import type { HannPower } from './hannPower.ts';

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
