import { type ErrorData, type ErrorMaker, makeError } from '../base/measureError.ts';

/** What can be wrong with a plan, with earlier documents, and with what is claimed of a unit. */
export interface BenchErrors {
  /** @property cause - why a grammar of its own refuses what stands there. */
  'plan.schema.refused': { readonly cause: ErrorData; readonly example: string; readonly found: string };
}

export const benchError: ErrorMaker<BenchErrors> = makeError;
