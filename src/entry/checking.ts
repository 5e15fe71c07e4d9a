/** What the tool is checked with and holds captures against: known waves, limit tables. */

export { limitTables } from '../judge/limits/limitTables.ts';
export { selfcheck } from '../synth/selfcheck.ts';
export { selfcheckLine } from '../words/checkLines.ts';
export { limitLines } from '../words/limitWords.ts';
