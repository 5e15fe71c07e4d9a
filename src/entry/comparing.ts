/** Two captures held against each other. */
export type { Comparand } from '../bench/compare/compareCaptures.ts';
export { compareCaptures } from '../bench/compare/compareCaptures.ts';
export type { CompareDocument } from '../bench/compare/compareDocument.ts';
export { isSame } from '../bench/compare/differenceOf.ts';
export { readMeasureDocument } from '../bench/readEarlier.ts';
export { overlayName } from '../draw/overlay/drawOverlaySheet.ts';
export { compareLines } from '../words/compareLines.ts';
