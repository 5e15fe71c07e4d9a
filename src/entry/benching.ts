/** Several captures as one bench test. */
export type { BenchDocument, BenchUnit } from '../bench/benchDocument.ts';
export { benchUnit } from '../bench/benchUnit.ts';
export { outletClaims } from '../bench/claims/outletClaims.ts';
export { compareUnits } from '../bench/compareUnits.ts';
export type { MeasuredUnit } from '../bench/measuredUnit.ts';
export { readEarlier } from '../bench/readEarlier.ts';
export { benchLines } from '../sheet/answer/bench/benchLines.ts';
export { comparisonLines } from '../sheet/answer/bench/comparisonLines.ts';
