/** Several captures as the parts of a page, and their sentences. */
export { benchSentences } from '../sheet/answer/bench/benchSentences.ts';
export { benchSpoken } from '../sheet/answer/bench/benchSpoken.ts';
export { compareSentence } from '../sheet/answer/compare/compareSentence.ts';
export { comparisonSentence } from '../sheet/comparison/comparisonSentence.ts';
export { comparisonTable } from '../sheet/html/bench/comparisonTable.ts';
export { unitTables } from '../sheet/html/bench/unitTables.ts';
export { differenceTables } from '../sheet/html/compare/differenceTables.ts';
