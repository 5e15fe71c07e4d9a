/** What sheets carry. Loads no package. */

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
} from '../draw/evidence.ts';
export type { Face, Press } from '../draw/seal.ts';
export {
  captureEvidence,
  capturesOfUnits,
  cardEvidence,
  carriedCaptures,
  carryOptions,
  overlayEvidence,
} from '../publish/evidence/captureEvidence.ts';
export { publishedNames, publishedOptions, publishedUnit } from '../publish/evidence/published.ts';
export { isSealed, type OpenedSheet, readEvidence } from '../publish/evidence/readEvidence.ts';
export type { RecheckDocument } from '../words/checkLines.ts';
export { recheckLines } from '../words/checkLines.ts';
export { differenceWords } from '../words/notices/rechecked.ts';
export { fileName } from '../words/text.ts';
