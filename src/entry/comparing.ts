/** Two captures held against each other. */
export type { Comparand } from '../bench/compare/comparand.ts';
export { compareCaptures } from '../bench/compare/compareCaptures.ts';
export type { CompareDocument } from '../bench/compare/compareDocument.ts';
export { isSame } from '../bench/compare/isSame.ts';
export { readMeasureDocument } from '../bench/compare/readMeasureDocument.ts';
export { compareLines } from '../sheet/answer/compare/compareLines.ts';
export { overlayName } from '../sheet/overlay/overlayName.ts';
