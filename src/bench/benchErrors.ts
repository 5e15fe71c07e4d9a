import { type ErrorData, type ErrorMaker, makeError } from '../base/measureError.ts';
import type { NoFacts } from '../base/notice.ts';

/** What can be wrong with a plan, with earlier documents, and with what is claimed of a unit. */
export interface BenchErrors {
  'claim.grammar.rating': { readonly text: string; readonly example: string };
  'claim.grammar.efficiency': { readonly text: string; readonly example: string };
  'battery.grammar': { readonly text: string };
  'energy.grammar': { readonly text: string };
  'earlier.json': NoFacts;
  'earlier.schema': { readonly found: OtherDocument };
  'document.json': NoFacts;
  'document.schema': { readonly found: OtherDocument };
  'document.results': { readonly results: number };
  /** @property name - of a mapping: `a unit`. */
  'plan.schema.mapping': Found & { readonly name: string; readonly keys: readonly string[] };
  'plan.schema.key': Found & {
    readonly name: string;
    readonly key: string;
    readonly keys: readonly string[];
  };
  /** @property what - as the plan's own words are called: `The load`. */
  'plan.schema.missing': Found & { readonly what: string; readonly example: string };
  'plan.schema.noText': Found & { readonly what: string; readonly example: string };
  'plan.schema.factor': Found & { readonly what: string; readonly example: string };
  'plan.schema.factors': Found & { readonly what: string; readonly example: string };
  /** @property name - of its parts: `Captures`. */
  'plan.schema.list': Found & { readonly name: string };
  'plan.schema.claims': Found;
  'plan.schema.instrument': Found;
  'plan.schema.rule': Found;
  'plan.schema.resistive': Found;
  'plan.schema.direction': Found;
  'plan.schema.noUnit': Found;
  'plan.schema.twoUnits': Found & { readonly name: string };
  'plan.schema.noCapture': Found & { readonly name: string };
  'plan.schema.noRating': Found;
  'plan.schema.noEnergy': Found;
  /** @property cause - why a grammar of its own refuses what stands there. */
  'plan.schema.refused': Found & { readonly cause: ErrorData; readonly example: string };
}

/** What stands at a place of a plan, shortened, as JSON; null: nothing. */
interface Found {
  readonly found: string | null;
}

/** What another document calls itself, or the place of the right one that is not as its schema says. */
export type OtherDocument = { readonly schema: string | null } | { readonly place: string };

/** What can be wrong with a part of a plan, what stands there apart. */
export type PlanProblem = Extract<keyof BenchErrors, `plan.schema.${string}`>;

export const benchError: ErrorMaker<BenchErrors> = makeError;
