import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { SampleRange } from '../../read/capture.ts';
import type { HalfCycleRms } from '../envelope.ts';
import type { Move } from './envelopeMoves.ts';

/** One step of the load, as the voltage shows it. Percentages are of the nominal voltage and signed. */
export interface LoadStep {
  /** On the file's own time axis. */
  readonly atS: MeasuredFigure;
  /** By the current where it changes, else on when the voltage falls. */
  readonly direction: 'on' | 'off';
  readonly directionBy: 'current' | 'voltage';
  /** Mean Urms(1/2) of the settled stretches, in U. */
  readonly before: MeasuredFigure;
  readonly after: MeasuredFigure;
  /** The Urms(1/2) farthest from `before`. */
  readonly extreme: MeasuredFigure;
  readonly deviationPercent: Figure;
  readonly afterPercent: Figure;
  /** How far past `after` the voltage goes on its way back from the extreme, ≥ 0. */
  readonly overshootPercent: Figure;
  /** From `atS` to the last exit from ±2 % of nominal around `after`. */
  readonly recoveryS: Figure;
  readonly recovery: readonly { readonly bandPercent: number; readonly s: Figure }[];
  /** Means of the settled stretches, and the cycle farthest from `beforeHz`. */
  readonly beforeHz: Figure;
  readonly afterHz: Figure;
  readonly extremeHz: Figure;
  /** The stretches that before and after are taken from, and what lies between, in samples. */
  readonly settledBefore: SampleRange;
  readonly settledAfter: SampleRange;
  readonly moving: SampleRange;
}

/**
 * When the load changed: a sharp step moves Urms(1/2) along a slope of one cycle with the step at its
 * middle, so the step stands half a cycle less the share of the slope after the value has gone that share.
 *
 * @param scatter - of one value, in the unit of the RMS.
 * @returns seconds on the file's own axis.
 * @remarks Within a twelfth of a cycle for a sharp step of a sine without noise. The share is small, so that a
 * voltage which falls over several cycles is timed near its start.
 */
export function stepTimeS({ timeS, rms, frequencyHz }: HalfCycleRms, move: Move, scatter: number): number {
  const level = move.before.mean;
  // The farthest within two cycles: what comes later is the regulation at work.
  let far = move.from;
  for (let k = move.from; k <= Math.min(move.last, move.from + 4); k++) {
    if (Math.abs(rms[k]! - level) > Math.abs(rms[far]! - level)) far = k;
  }
  const change = rms[far]! - level;
  const share = Math.min(0.5, Math.max(0.25, (3 * scatter) / Math.abs(change)));
  const gone = (k: number): number => (rms[k]! - level) / change;
  let k = far;
  while (k > 0 && k >= move.from && gone(k - 1) > share) k--;
  const periodS = 1 / frequencyHz[k]!;
  if (k === 0) return timeS[0]! + (0.5 - share) * periodS;
  const between = (share - gone(k - 1)) / (gone(k) - gone(k - 1));
  const crossing = timeS[k - 1]! + Math.max(0, Math.min(1, between)) * (timeS[k]! - timeS[k - 1]!);
  return crossing + (0.5 - share) * periodS;
}
