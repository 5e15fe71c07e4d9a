import type { Figure } from '../base/figure.ts';
import type { Worded } from '../base/notice.ts';
import type { StepFinding } from '../judge/curves/stepFindings.ts';
import type { SupplyEvent } from '../measure/breaks/supplyEvent.ts';
import type { Budget } from '../measure/doubt/budget.ts';
import type { Excursion } from '../measure/envelope.ts';
import type { FigureName } from '../measure/figures.ts';
import type { LoadStep } from '../measure/steps/loadStep.ts';
import type { AssayResult } from './measureDocument.ts';

/** A result together with the wave it was measured on, as much as a picture needs. */
export interface Assay {
  readonly result: AssayResult;
  readonly trace: Trace;
  /** Null where the record is steady throughout. */
  readonly dynamics: Dynamics | null;
  /** How the uncertainty of each figure is made up. */
  readonly budgets: readonly NamedBudget[];
  /** How it was measured, a short line each: method, span, orders, assumed instrument figures, rule. */
  readonly method: readonly string[];
}

/** The same as sheets are drawn from: in the words of its document. */
export type WordedAssay = Worded<Assay>;

/** What changes along a record: envelope, steps and events. Times on the file's own axis. */
export interface Dynamics {
  /** Centres of the cycles of Urms(1/2), ascending; shape N. */
  readonly timeS: Float64Array;
  /** Urms(1/2), V; shape N. */
  readonly rmsHalfCycle: Float64Array;
  readonly steps: readonly Omit<LoadStep, 'directionBy' | 'settledBefore' | 'settledAfter' | 'moving'>[];
  readonly events: readonly (SupplyEvent | Excursion)[];
  /** Each step held against each published curve that fits; `step` says which of `steps`. */
  readonly curves: readonly (StepFinding & { readonly step: number })[];
  /** The voltage itself; shape M, NaN where there is no value; null where it was not kept. */
  readonly instantaneous: { readonly timeS: Float64Array; readonly volts: Float64Array } | null;
  /** THD before and after the first step; null where neither stretch can be measured. */
  readonly distortion: { readonly beforePercent: Figure; readonly afterPercent: Figure } | null;
}

export interface NamedBudget {
  readonly key: FigureName;
  /** In words: "RMS". */
  readonly figure: string;
  readonly unit: string;
  readonly value: number;
  readonly uncertainty: number;
  readonly budget: Budget;
}

/** Two cycles of the wave (fewer where the record is shorter), starting at a rising zero of the fundamental. */
export interface Trace {
  /** Seconds from that rising zero, ascending, from below zero in a record of under three cycles; shape N. */
  readonly timeS: Float64Array;
  /** That rising zero on the file's own axis; where nothing repeats, the first sample. Sheets don't carry it. */
  readonly zeroS?: number;
  /** In the channel's unit; NaN where the file holds no value; shape N. */
  readonly wave: Float64Array;
  /** The sine of the same AC RMS and the fundamental's phase, on the mean; shape N. */
  readonly ideal: Float64Array;
  /** wave − ideal; shape N. */
  readonly residual: Float64Array;
  readonly unit: 'V' | 'A';
}
