/** What people write in a word or two: claims and nominal voltages. Loads no package. */
export { MeasureError } from '../base/measureError.ts';
export { parseClaim } from '../judge/claims/parseClaim.ts';
export { parseNominal } from '../judge/nominal/mainsNominals.ts';
