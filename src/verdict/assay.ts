import type { Budget } from '../figures/uncertainty/budget.ts';
import type { MeasureResult } from './measureDocument.ts';

/** A result together with the wave it was measured on, as much as a picture needs. */
export interface Assay {
  readonly result: MeasureResult;
  readonly trace: Trace;
  /** How the uncertainty of each figure is made up. */
  readonly budgets: readonly NamedBudget[];
  /** How it was measured, a short line each: method, span, orders, assumed instrument figures, rule. */
  readonly method: readonly string[];
}

export interface NamedBudget {
  /** In words: "RMS voltage". */
  readonly figure: string;
  readonly unit: string;
  readonly value: number;
  readonly uncertainty: number;
  readonly budget: Budget;
}

/** Two cycles of the wave (fewer where the record is shorter), starting at a rising zero of the fundamental. */
export interface Trace {
  /** Seconds from that rising zero, ascending; shape N. */
  readonly timeS: Float64Array;
  /** In the channel's unit; NaN where the file holds no value; shape N. */
  readonly wave: Float64Array;
  /** The sine of the same AC RMS and the fundamental's phase, on the mean; shape N. */
  readonly ideal: Float64Array;
  /** wave − ideal; shape N. */
  readonly residual: Float64Array;
  readonly unit: 'V' | 'A';
}
