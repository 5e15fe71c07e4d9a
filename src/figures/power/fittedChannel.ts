import type { HarmonicFit } from '../../signal/harmonicFit.ts';

/** One channel's samples on an even time base. Any measured wave or wave input is one. */
export interface SampledChannel {
  /** Shape N, in U; NaN marks a missing sample. */
  readonly samples: Float64Array;
  readonly intervalS: number;
  /** Time of sample 0. */
  readonly startS: number;
  /** Digitiser step in U where it is known, else null. */
  readonly stepSize: number | null;
}

/** Samples and the harmonic series fitted to them. */
export interface FittedChannel {
  /** Shape N, in U; NaN marks a missing sample. */
  readonly samples: Float64Array;
  readonly fit: HarmonicFit;
}
