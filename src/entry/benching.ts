/** Several captures as one bench test. */

export { parseWatts, wattsInWords } from '../assay/loadSeen.ts';
export type { BenchDocument, BenchUnit } from '../bench/benchDocument.ts';
export { benchUnit } from '../bench/benchUnit.ts';
export { outletClaims, parseUnitClaim } from '../bench/claims/parseUnitClaim.ts';
export { compareUnits } from '../bench/compareUnits.ts';
export type { MeasuredUnit, ToldTransfer } from '../bench/measuredUnit.ts';
export { isResistiveFullStep, nominalOfUnit, unitNominal } from '../bench/measuredUnit.ts';
export { readEarlier } from '../bench/readEarlier.ts';
export type { ToldLoad } from '../bench/sweep/benchPoint.ts';
export { sweepName } from '../draw/sweep/sweepRows.ts';
export { isWholeNominal } from '../judge/nominal/mainsNominals.ts';
export { isSmooth } from '../judge/waveform/kinds.ts';
export { benchLines, comparisonLines } from '../words/bench/benchLines.ts';
