/** Several captures as the parts of a page, and their sentences. */

export { comparisonTable, differenceTables } from '../publish/html/comparisonTables.ts';
export { unitTables } from '../publish/html/unitTables.ts';
export { benchSentences } from '../words/bench/benchLines.ts';
export { benchSpoken } from '../words/bench/benchSpoken.ts';
export { comparisonSentence } from '../words/bench/comparisonSentence.ts';
export { compareSentence } from '../words/compareLines.ts';
