import { measureSchema, resultSchema } from '../assay/resultSchema.ts';
import { figure, measuredFigure, type Schema } from '../base/schema.ts';
import { benchSchema, unitSchema } from '../bench/benchSchema.ts';
import { compareSchema } from '../bench/compare/compareSchema.ts';
import { planSchema } from '../bench/plan/planSchema.ts';
import { energySchema } from '../energy/energySchema.ts';
import { instrumentFileSchema } from '../measure/doubt/instrumentSchema.ts';
import { truthSchema } from '../synth/truthSchema.ts';
import { evidenceSchema } from './evidence/evidenceSchema.ts';
import { recheckSchema } from './recheck/recheckSchema.ts';

/**
 * The schema of each document that leaves the program, by the name in its key `schema`: `sineassay/measure@1`; and of
 * those that people write for it, which have no such key.
 */
export const documentSchemas: Readonly<Record<string, Schema<unknown>>> = {
  measure: measureSchema,
  bench: benchSchema,
  compare: compareSchema,
  recheck: recheckSchema,
  energy: energySchema,
  truth: truthSchema,
  sheet: evidenceSchema,
  plan: planSchema,
  instrument: instrumentFileSchema,
};

/** Parts that documents have in many places, by the names that their schemas call them. */
export const sharedSchemas: Readonly<Record<string, Schema<unknown>>> = {
  ...{ figure, measuredFigure, result: resultSchema, unit: unitSchema },
};
