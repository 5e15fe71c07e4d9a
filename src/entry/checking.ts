/** What the tool is checked with and holds captures against: known waves, limit tables. */
export { limitLines } from '../sheet/answer/limitLines.ts';
export { selfcheckLine } from '../sheet/answer/selfcheckLine.ts';
export { limitTables } from '../verdict/limits/limitTables.ts';
export { selfcheck } from '../verdict/selfcheck/selfcheck.ts';
