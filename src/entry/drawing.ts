/** The sheets as SVG, and sheets checked by drawing them again. Loads d3. */
export { drawPicture } from '../draw/drawPicture.ts';
export { sealedSheet } from '../publish/evidence/sealedSheet.ts';
export { recheckCaptures } from '../publish/recheck/recheckCaptures.ts';
export { recheckSheet } from '../publish/recheck/recheckSheet.ts';
