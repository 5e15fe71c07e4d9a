import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { SampleRange } from '../../capture/capture.ts';

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
