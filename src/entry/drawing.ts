/** The sheets as SVG. Loads d3. */
export { comparisonSvg } from '../sheet/comparisonSvg.ts';
export { sheetSvg } from '../sheet/sheetSvg.ts';
export { stepSvg } from '../sheet/stepSvg.ts';
export { sweepSvg } from '../sheet/sweepSvg.ts';
