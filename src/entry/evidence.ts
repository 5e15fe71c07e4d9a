/** What sheets carry. Loads no package. */
export { captureEvidence, carryOptions } from '../sheet/evidence/captureEvidence.ts';
export type { CarriedCapture, CarriedOptions, Evidence } from '../sheet/evidence/evidence.ts';
export type { Press } from '../sheet/evidence/press.ts';
export { type OpenedSheet, readEvidence } from '../sheet/evidence/readEvidence.ts';
