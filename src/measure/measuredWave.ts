import type { AmplitudeLevel } from '../signal/amplitudeLevels.ts';
import type { HannPower, SpectralLine } from '../signal/hannPower.ts';
import type { HarmonicFit } from '../signal/harmonicFit.ts';
import type { HarmonicSeries } from '../signal/harmonicSeries.ts';
import type { Extremes } from '../signal/statistics.ts';
import type { Unrest } from './doubt/unrest.ts';
import type { FoldedExtremes } from './foldedExtremes.ts';
import type { WaveFigures } from './waveFigures.ts';

/** One channel's samples on an even time base: what is measured. */
export interface WaveInput {
  /** Shape N, in U; NaN marks a missing sample. Not changed. */
  readonly samples: Float64Array;
  /** > 0. */
  readonly intervalS: number;
  /** What it may be off by, each way, over itself; absent: no more than the time base of the instrument. */
  readonly intervalWithin?: number | undefined;
  /** Time of sample 0. */
  readonly startS: number;
  /** Digitiser step in U where the file states it, else null. */
  readonly stepSize: number | null;
  /** True where the file says that DC was blocked. */
  readonly acCoupled: boolean;
  /** True for the voltage of a supply: then a cycle of it is not refused. Default false. */
  readonly isSupply?: boolean;
}

/** A wave measured: its figures, and what the kind of wave and the picture are made from. */
export interface MeasuredWave {
  readonly figures: WaveFigures;
  /** Null where nothing repeats: DC or noise. */
  readonly periodic: PeriodicWave | null;
  /** The stretch measured, inside the input. */
  readonly samples: Float64Array;
  readonly intervalS: number;
  readonly startS: number;
  /** Digitiser step in U, stated or read off the record; null where there is none to see. */
  readonly stepSize: number | null;
  /** Null where it repeats. */
  readonly aperiodic: 'constant' | 'direct' | 'noise' | 'brief' | null;
}

/** A sample that neither its neighbours nor the same places of other cycles explain. */
export interface Outlier {
  /** Index within the record measured. */
  readonly sample: number;
  /** In U. */
  readonly value: number;
}

export interface PeriodicWave {
  /** Of the raw samples. */
  readonly extent: Extremes;
  readonly fit: HarmonicFit;
  /** Phase of the fundamental at the record's centre, so that sin(ωu + phase) is its sine, radians. */
  readonly phaseRad: number;
  /** The orders of the fit that stand above their noise: the wave without noise and without what lies above. */
  readonly series: HarmonicSeries;
  /** One cycle, from a rising zero of the fundamental, 1024 points, in U. */
  readonly cycle: Float64Array;
  /** Levels the wave rests at, ascending; empty for a smooth wave. */
  readonly levels: readonly AmplitudeLevel[];
  /** Edges between the levels in one cycle; 0 for a smooth wave. */
  readonly switchesPerCycle: number;
  /** Single values that no wave explains, in time order. */
  readonly outliers: readonly Outlier[];
  /** Peak and trough of a wave that the orders fitted don't follow; null where its cycle tells them. */
  readonly extremes: FoldedExtremes | null;
  /** True where a digitiser's codes are so few that a staircase could hide behind them: each row lies within one of a sine's. */
  readonly fewCodes: boolean;
  /** Spectrum of what the fit leaves, of the middle of a long record; null where that is too short for one. */
  readonly residualPower: HannPower | null;
  /** A line above the orders measured that stands out of the noise; null where there is none. */
  readonly ripple: (SpectralLine & { readonly frequencyHz: number }) | null;
  /** Standard deviation of the noise, in U. */
  readonly noise: number;
  /** Not rounded. */
  readonly periodSamples: number;
  /** Size of each whole cycle relative to the fit, in time order, of `cycleGains`. */
  readonly gains: readonly number[];
  /** What the fit does not know of. */
  readonly unrest: Unrest;
}

/** A record with its periodic wave found. */
export interface PeriodicRecord {
  readonly samples: Float64Array;
  readonly intervalS: number;
  /** Of the input. */
  readonly intervalWithin?: number | undefined;
  readonly startS: number;
  readonly stepSize: number | null;
  readonly acCoupled: boolean;
  readonly periodic: PeriodicWave;
}
