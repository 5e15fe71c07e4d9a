/** The sheets as SVG, and sheets checked by drawing them again. Loads d3. */
export { sealedSheet } from '../sheet/evidence/sealedSheet.ts';
export { recheckBench } from '../sheet/recheck/recheckBench.ts';
export { recheckCapture } from '../sheet/recheck/recheckCapture.ts';
export { recheckSheet } from '../sheet/recheck/recheckSheet.ts';
