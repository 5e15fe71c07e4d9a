import { type Course, course } from './course.ts';
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
