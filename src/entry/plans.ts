/** What people write into files of their own: plans and instrument files. Loads yaml. */
export type { BenchPlan, CaptureOptions, PlannedUnit } from '../bench/plan/benchPlan.ts';
export { type LookedInto, lookedInto, planText } from '../bench/plan/planText.ts';
export { planOf, readPlan } from '../bench/plan/readPlan.ts';
export { readInstrument } from '../measure/doubt/readInstrument.ts';
