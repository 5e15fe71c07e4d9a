import type { NamedBudget } from '../../verdict/assay.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';

/** One side of a comparison: the result of one capture. */
export interface Comparand {
  readonly result: MeasureResult;
  /** How the main figures' uncertainties are made up; null where the result alone is at hand. */
  readonly budgets: readonly NamedBudget[] | null;
}
