import { hypot } from '../base/elementary.ts';
import type { MissingFigure } from '../base/figure.ts';
import type { Moments } from '../signal/statistics.ts';
import type { MeasuredWave, PeriodicRecord } from './measuredWave.ts';
import type { PeriodicQuantities } from './periodicQuantities.ts';
import { missing } from './reasons.ts';

interface Estimated {
  /** The highest harmonic that was asked for. */
  readonly ordersAsked: number;
  /** True where a gap of over half a cycle split the record. */
  readonly split: boolean;
}

/** A periodic wave's values. */
export interface PeriodicEstimate extends PeriodicRecord, Estimated {
  readonly quantities: PeriodicQuantities;
  readonly aperiodic: null;
}

/** What is there of a record in which nothing repeats. */
export interface AperiodicEstimate extends Omit<PeriodicRecord, 'periodic'>, Estimated {
  readonly periodic: null;
  readonly aperiodic: MeasuredWave['aperiodic'];
  /** Of the samples. */
  readonly moments: Moments;
}

/** What a record holds, before it is said how far that may be off. */
export type WaveEstimate = PeriodicEstimate | AperiodicEstimate;

/** A value before its doubt, or why there is none. */
export type Value = { readonly value: number } | MissingFigure;

/** A meter that takes the mean of |v| shows the RMS of a sine of that mean: π / (2√2). */
export const AVERAGE_TO_RMS: number = Math.PI / (2 * Math.SQRT2);

/** What ties the volts to something else, and what tells a burst from a wave: values that need no doubt yet. */
export interface WaveValues {
  readonly rms: Value;
  readonly acRms: Value;
  readonly mean: Value;
  readonly averageResponding: Value;
  readonly frequencyHz: Value;
}

/** The values of an estimate under the names of its figures. */
export function waveValues(estimate: WaveEstimate): WaveValues {
  const { intervalS } = estimate;
  if (estimate.periodic !== null) {
    const { rms, acRms, mean, acRectified } = estimate.quantities;
    return {
      rms: { value: rms },
      acRms: { value: acRms },
      mean: estimate.acCoupled ? AC_COUPLED : { value: mean },
      averageResponding: { value: AVERAGE_TO_RMS * acRectified },
      frequencyHz: { value: estimate.periodic.fit.omega / (2 * Math.PI * intervalS) },
    };
  }
  const none = nothingRepeats(estimate.aperiodic);
  const periodless = { averageResponding: none, frequencyHz: none };
  // Over what is mostly without voltage a mean tells nothing of it.
  if (estimate.aperiodic === 'brief') return { ...periodless, rms: none, acRms: none, mean: none };
  const { mean, standardDeviation, count } = estimate.moments;
  const acRms = standardDeviation * Math.sqrt((count - 1) / count);
  return {
    ...periodless,
    rms: { value: hypot(mean, acRms) },
    acRms: { value: acRms },
    mean: estimate.acCoupled ? AC_COUPLED : { value: mean },
  };
}

/**
 * Whether a wave alternates: of a direct voltage with ripple there is more than three times as much DC as AC. Even a
 * half-wave has less DC than AC.
 */
export function alternates({ mean, acRms }: Pick<WaveValues, 'mean' | 'acRms'>): boolean {
  return !isDirect(mean.value ?? 0, acRms.value ?? 0);
}

/** No alternating wave, not even a half-wave, has so much more mean than swing. */
const DIRECT_SHARE = 3;

/** Whether a voltage of this mean and AC RMS is a direct one. */
export function isDirect(mean: number, acRms: number): boolean {
  return Math.abs(mean) > DIRECT_SHARE * acRms;
}

/** A figure that needs a period, where there is none. */
export function nothingRepeats(aperiodic: AperiodicEstimate['aperiodic']): MissingFigure {
  return missing({ code: 'wave.repeatsNot', of: aperiodic ?? 'constant' });
}

/** The mean of a channel whose DC was blocked: "not measurable", never "no DC". */
export const AC_COUPLED: MissingFigure = missing({ code: 'mean.blocked' });
