/** What sheets carry. Loads no package. */
export { fileName } from '../sheet/answer/fileName.ts';
export { recheckLines } from '../sheet/answer/recheckLines.ts';
export { captureEvidence, cardEvidence, carryOptions } from '../sheet/evidence/captureEvidence.ts';
export { capturesOfUnits, carriedCaptures } from '../sheet/evidence/carriedCaptures.ts';
export type {
  CaptureEvidence,
  CardTheme,
  CarriedCapture,
  CarriedOptions,
  CarriedUnit,
  ComparisonEvidence,
  Evidence,
  OneCapture,
  OverlayEvidence,
  SweepEvidence,
} from '../sheet/evidence/evidence.ts';
export { isSealed } from '../sheet/evidence/isSealed.ts';
export { overlayEvidence } from '../sheet/evidence/overlayEvidence.ts';
export type { Press } from '../sheet/evidence/press.ts';
export { publishedNames, publishedOptions, publishedUnit } from '../sheet/evidence/published.ts';
export { type OpenedSheet, readEvidence } from '../sheet/evidence/readEvidence.ts';
export type { Face } from '../sheet/evidence/typeface.ts';
export type { RecheckDocument } from '../sheet/recheck/recheckDocument.ts';
