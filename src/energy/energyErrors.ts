import { type ErrorMaker, makeError } from '../base/measureError.ts';
import type { NoFacts } from '../base/notice.ts';

/** What can't be understood of what a person tells of a log. */
export interface EnergyErrors {
  'claim.grammar.ofLog': { readonly text: string };
  'rating.grammar': { readonly text: string; readonly unit: 'Wh' | 'Ah' };
  /** No column tells what flows. */
  'log.noLoad': NoFacts;
}

export const energyError: ErrorMaker<EnergyErrors> = makeError;
