/** The sheets as SVG, and sheets checked by drawing them again. Loads d3. */
export { drawPicture } from '../sheet/evidence/drawPicture.ts';
export { sealedSheet } from '../sheet/evidence/sealedSheet.ts';
export { recheckCaptures } from '../sheet/recheck/recheckCaptures.ts';
export { recheckSheet } from '../sheet/recheck/recheckSheet.ts';
