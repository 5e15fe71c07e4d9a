/** Several captures as one bench test. */
export type { BenchDocument, BenchUnit } from '../bench/benchDocument.ts';
export { benchUnit } from '../bench/benchUnit.ts';
export { outletClaims } from '../bench/claims/outletClaims.ts';
export { parseUnitClaim } from '../bench/claims/parseUnitClaim.ts';
export { compareUnits } from '../bench/compareUnits.ts';
export type { MeasuredUnit, ToldTransfer } from '../bench/measuredUnit.ts';
export { readEarlier } from '../bench/readEarlier.ts';
export type { ToldLoad } from '../bench/sweep/toldLoad.ts';
export { nominalOfUnit, unitNominal } from '../bench/unitNominal.ts';
export { benchLines } from '../sheet/answer/bench/benchLines.ts';
export { comparisonLines } from '../sheet/answer/bench/comparisonLines.ts';
export { sweepName } from '../sheet/sweep/sweepName.ts';
export { parseWatts } from '../verdict/load/parseWatts.ts';
export { wattsInWords } from '../verdict/load/wattsInWords.ts';
export { isWholeNominal } from '../verdict/nominal/mainsNominals.ts';
