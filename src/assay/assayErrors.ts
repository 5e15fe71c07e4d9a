import { type ErrorMaker, makeError } from '../base/measureError.ts';
import type { NoFacts } from '../base/notice.ts';

/** What is wrong with what a person tells of a capture. */
export interface AssayErrors {
  /** The voltage itself, told to be the current. */
  'channel.same': { readonly channel: string; readonly others: readonly string[] };
  'load.grammar': { readonly text: string };
  /** @property wanted - in the words of the catalogue of options. */
  'option.refused': { readonly wanted: string };
  'option.refused.number': NoFacts;
  'option.refused.large': { readonly most: number };
  'option.refused.noScale': NoFacts;
  'option.refused.skew': NoFacts;
  'option.refused.directInput': NoFacts;
}

export const assayError: ErrorMaker<AssayErrors> = makeError;
