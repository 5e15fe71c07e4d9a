/** From the bytes of an energy log to its answer and its document. */

export { assayLog } from '../energy/energyAssay.ts';
export type { EnergyDocument, EnergyResult } from '../energy/energyDocument.ts';
export { type JudgedLog, judgedLog, judgedPair, type LogBudget } from '../energy/energyResult.ts';
export { readEnergyLog } from '../energy/log/readEnergyLog.ts';
export type { LogAssay, LogTold } from '../energy/logAssay.ts';
export { budgetLines } from '../words/allLines.ts';
export { energyLines, togetherSentence } from '../words/energy/energyLines.ts';
export { wordedEnergy } from '../words/energy/wordedEnergy.ts';
export { failureLine } from '../words/rankNotices.ts';
export { jsonText } from '../words/text.ts';
