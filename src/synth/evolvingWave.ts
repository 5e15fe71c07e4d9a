import { cos, exp, sin } from '../base/elementary.ts';
import type { KnownWave } from './knownWave.ts';

/** A voltage whose size, frequency, phase and shape change on the way: load steps, breaks, transfers. */
export interface EvolvingWave {
  /** Noise-free value. */
  at(timeS: number): number;
  /** Of the shape, not wrapped. */
  phaseCyclesAt(timeS: number): number;
  /** RMS that the wave would have if it stayed as it is at that time; 0 in a break. */
  rmsAt(timeS: number): number;
  frequencyHzAt(timeS: number): number;
}

export interface Evolution {
  readonly wave: KnownWave;
  readonly frequencyHz: number | Course;
  /** Factor on the wave. Default 1. */
  readonly amplitude?: Course;
  /** The phase at time 0. Default 0. */
  readonly phaseCycles?: number;
  /** From each time on, another source: its phase ahead of the one before it, its shape where it differs. */
  readonly takeovers?: readonly {
    readonly atS: number;
    readonly aheadCycles: number;
    readonly wave?: KnownWave;
  }[];
  /** No voltage at all: from ≤ t < to. */
  readonly breaks?: readonly { readonly fromS: number; readonly toS: number }[];
}

/** A wave of any shape under an envelope. */
export function evolvingWave(evolution: Evolution): EvolvingWave {
  const { amplitude = course(1), phaseCycles = 0, takeovers = [], breaks = [] } = evolution;
  const frequencyHz =
    typeof evolution.frequencyHz === 'number' ? course(evolution.frequencyHz) : evolution.frequencyHz;
  const isBroken = (timeS: number): boolean => breaks.some(({ fromS, toS }) => fromS <= timeS && timeS < toS);
  const waveAt = (timeS: number): KnownWave =>
    takeovers.findLast(({ atS, wave }) => atS <= timeS && wave !== undefined)?.wave ?? evolution.wave;
  const phaseCyclesAt = (timeS: number): number => {
    let phase = phaseCycles + frequencyHz.integral(0, timeS);
    for (const { atS, aheadCycles } of takeovers) if (atS <= timeS) phase += aheadCycles;
    return phase;
  };
  return {
    at: (timeS) => (isBroken(timeS) ? 0 : amplitude.at(timeS) * waveAt(timeS).at(phaseCyclesAt(timeS))),
    phaseCyclesAt,
    rmsAt: (timeS) => (isBroken(timeS) ? 0 : amplitude.at(timeS) * waveAt(timeS).truth.rms),
    frequencyHzAt: frequencyHz.at,
  };
}

/** A quantity that stands at a level, then goes to another, once or several times. */
export interface Course {
  at(timeS: number): number;
  /** ∫ of the quantity between two times, exact. */
  integral(fromS: number, toS: number): number;
}

export interface Change {
  readonly atS: number;
  /** The level it settles at. */
  readonly to: number;
  /**
   * How it settles: by · e^(−t/τ) · cos(2π · ringHz · t) is added to the new level, t from the change.
   * Absent: at once.
   */
  readonly transient?: { readonly by: number; readonly tauS: number; readonly ringHz?: number };
}

/**
 * The course from an initial level through changes; each ends the transient of the one before.
 *
 * @param changes - in time order.
 * @example course(230, [{ atS: 0, to: 225, transient: { by: -20, tauS: 0.05 } }]).at(0) // 205
 */
export function course(initial: number, changes: readonly Change[] = []): Course {
  const stretches: Change[] = [{ atS: Number.NEGATIVE_INFINITY, to: initial }, ...changes];
  return {
    at(timeS) {
      const change = stretches.findLast(({ atS }) => atS <= timeS)!;
      const { to, transient } = change;
      if (transient === undefined) return to;
      const { by, tauS, ringHz = 0 } = transient;
      const t = timeS - change.atS;
      return to + by * exp(-t / tauS) * cos(2 * Math.PI * ringHz * t);
    },
    integral(fromS, toS) {
      if (toS < fromS) return -this.integral(toS, fromS);
      let sum = 0;
      stretches.forEach((change, i) => {
        const from = Math.max(fromS, change.atS);
        const to = Math.min(toS, stretches[i + 1]?.atS ?? Number.POSITIVE_INFINITY);
        if (to <= from) return;
        sum += change.to * (to - from);
        if (change.transient !== undefined) {
          sum += transientIntegral(change.transient, to - change.atS);
          sum -= transientIntegral(change.transient, from - change.atS);
        }
      });
      return sum;
    },
  };
}

/** ∫₀ᵗ by·e^(−s/τ)·cos ωs ds = by·[ a + e^(−t/τ)·(ω·sin ωt − a·cos ωt) ] / (a² + ω²), a = 1/τ */
function transientIntegral({ by, tauS, ringHz = 0 }: NonNullable<Change['transient']>, t: number): number {
  const decay = 1 / tauS;
  const omega = 2 * Math.PI * ringHz;
  const swing = omega * sin(omega * t) - decay * cos(omega * t);
  return (by * (decay + exp(-decay * t) * swing)) / (decay ** 2 + omega ** 2);
}
