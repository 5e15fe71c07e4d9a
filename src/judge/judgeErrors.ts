import { type ErrorMaker, makeError } from '../base/measureError.ts';

/** What can't be understood of what a maker says or a person tells of the outlet. */
export interface JudgeErrors {
  'nominal.grammar': { readonly text: string };
  'claim.grammar': { readonly text: string; readonly lacks: ClaimLack };
  /** One about a unit as a whole, which no single capture can judge. */
  'claim.grammar.ofUnit': { readonly text: string };
}

/** What a claim should have had. */
export type ClaimLack =
  | 'value'
  | 'quantity'
  | 'one unit of ends'
  | 'order of ends'
  | 'one unit of tolerances'
  | 'unit of value'
  | 'no percent of percent'
  /** Another unit behind the value; null: none. */
  | { readonly unit: string | null; readonly not: string }
  | { readonly toleranceIn: string };

export const judgeError: ErrorMaker<JudgeErrors> = makeError;
