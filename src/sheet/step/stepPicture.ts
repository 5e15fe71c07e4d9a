import type { Figure } from '../../base/figure.ts';
import type { Excursion } from '../../figures/envelope/excursions.ts';
import type { SupplyEvent } from '../../figures/gaps/supplyEvent.ts';
import type { LoadStep } from '../../figures/steps/loadStep.ts';
import type { StepFinding } from '../../verdict/dynamics/stepFindings.ts';

/** What a sheet shows of a voltage that changes along its record. All times on the file's own axis. */
export interface StepPicture {
  /** Centres of the cycles, ascending; shape N. */
  readonly timeS: Float64Array;
  /** Urms(1/2), V; shape N. */
  readonly rmsHalfCycle: Float64Array;
  readonly steps: readonly PicturedStep[];
  readonly events: readonly PicturedEvent[];
  readonly curves: readonly StepCurve[];
  /** The voltage itself, at least some cycles either side of the instants; null where it was not kept. */
  readonly instantaneous: {
    /** Ascending; shape M. */
    readonly timeS: Float64Array;
    /** Shape M; NaN where there is no value. */
    readonly volts: Float64Array;
  } | null;
  /** THD of the stretches before and after the step that the sheet is about; null where not measured. */
  readonly distortion: { readonly beforePercent: Figure; readonly afterPercent: Figure } | null;
}

export type PicturedStep = Omit<LoadStep, 'directionBy' | 'settledBefore' | 'settledAfter' | 'moving'>;

export type PicturedEvent = SupplyEvent | Excursion;

/** One step held against one published curve. */
export interface StepCurve extends StepFinding {
  /** Which of `steps`. */
  readonly step: number;
}
