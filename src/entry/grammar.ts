/** What people write in a word or two: options, claims, nominal voltages. Loads no package. */
export type { Field, Flag, Wanted } from '../assay/options/option.ts';
export { fields, flagName, flags, type Of, planKeys, toldBy } from '../assay/options/optionLists.ts';
export type { CheckField, FieldName, OptionKey, TextField, Told } from '../assay/options/options.ts';
export { finiteNumber } from '../assay/options/optionValues.ts';
export { type ErrorData, errorData, errorOf, MeasureError, wordedError } from '../base/measureError.ts';
export { claimExamples, everyClaimExample } from '../judge/claims/claimedQuantities.ts';
export { parseClaim } from '../judge/claims/parseClaim.ts';
export { parseNominal } from '../judge/nominal/mainsNominals.ts';
export { briefly, errorWords } from '../words/errors/errorWords.ts';
