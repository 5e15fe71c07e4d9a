import type { HalfCycleRms } from './halfCycleRms.ts';

export type ExcursionKind = 'dip' | 'swell' | 'interruption';

/** A time for which Urms(1/2) was past a threshold. */
export interface Excursion {
  readonly kind: ExcursionKind;
  /** Time stamps of the first value past the threshold and of the first back within it and the hysteresis. */
  readonly startS: number;
  /** The record's last value where it doesn't come back. */
  readonly endS: number;
  /** False where the record starts inside it. */
  readonly startSeen: boolean;
  readonly endSeen: boolean;
  /** endS − startS; certain to a half cycle at each end, a lower bound where an end isn't seen. */
  readonly durationS: number;
  /** The lowest value of a dip or interruption (residual voltage), the highest of a swell, in U. */
  readonly extreme: number;
}

export interface ExcursionThresholds {
  readonly dipRatio: number;
  readonly swellRatio: number;
  readonly interruptionRatio: number;
  readonly hysteresisRatio: number;
}

/** The usual settings, all of the declared voltage (IEC 61000-4-30 and EN 50160, from memory). */
export const USUAL_THRESHOLDS: ExcursionThresholds = {
  dipRatio: 0.9,
  swellRatio: 1.1,
  interruptionRatio: 0.1,
  hysteresisRatio: 0.02,
};

/** Ratios are compared to this: 0.1 + 0.02 is not quite 0.12. */
const ROUNDING = 1e-9;

/**
 * Dips, swells and interruptions, in order of their start; an interruption is also part of a dip.
 *
 * @param nominal - declared voltage, in U, > 0.
 * @see IEC 61000-4-30, voltage dip, swell and interruption on Urms(1/2) (from memory). There the stamp is that
 * of the value itself; here values are stamped at their cycle's centre.
 */
export function excursions(
  { timeS, rms }: HalfCycleRms,
  nominal: number,
  thresholds: ExcursionThresholds = USUAL_THRESHOLDS,
): readonly Excursion[] {
  const { dipRatio, swellRatio, interruptionRatio, hysteresisRatio } = thresholds;
  const spans = (kind: ExcursionKind, sign: 1 | -1, thresholdRatio: number): Excursion[] => {
    const found: Excursion[] = [];
    const back = thresholdRatio - sign * hysteresisRatio;
    for (let k = 0; k < rms.length; k++) {
      if (!(sign * (rms[k]! / nominal - thresholdRatio) > ROUNDING)) continue;
      const start = k;
      let extreme = rms[k]!;
      while (k < rms.length && sign * (rms[k]! / nominal - back) > ROUNDING) {
        if (sign * rms[k]! > sign * extreme) extreme = rms[k]!;
        k++;
      }
      const endSeen = k < rms.length;
      const [startS, endS] = [timeS[start]!, timeS[Math.min(k, rms.length - 1)]!];
      found.push({ kind, startS, endS, startSeen: start > 0, endSeen, durationS: endS - startS, extreme });
    }
    return found;
  };
  return [
    ...spans('dip', -1, dipRatio),
    ...spans('swell', 1, swellRatio),
    ...spans('interruption', -1, interruptionRatio),
  ].sort((a, b) => a.startS - b.startS);
}

/**
 * Excursions whose beginning or end the record shows: where the whole of it lies off, or hovers at the threshold, the
 * nominal voltage may be the wrong one.
 */
export function withEnds(
  found: readonly Excursion[],
  { timeS, rms }: HalfCycleRms,
  nominal: number,
  { hysteresisRatio }: ExcursionThresholds = USUAL_THRESHOLDS,
): readonly Excursion[] {
  return found.filter(({ kind, startS, startSeen, endSeen, extreme }) => {
    if (endSeen || !startSeen) return endSeen;
    const sign = kind === 'swell' ? 1 : -1;
    return rms.some((value, k) => timeS[k]! < startS && sign * (extreme - value) > hysteresisRatio * nominal);
  });
}
