/** The core of Sineassay: from the bytes of a capture to its answer, its document and its sheet. */
export { MeasureError } from './base/measureError.ts';
export type { Capture, Channel } from './capture/capture.ts';
export { readCapture } from './capture/readCapture.ts';
export { captureLayouts, type LayoutName } from './capture/writing/captureLayouts.ts';
export { allLines } from './sheet/answer/allLines.ts';
export { answerLines } from './sheet/answer/answerLines.ts';
export { failureLine } from './sheet/answer/failureLine.ts';
export { limitLines } from './sheet/answer/limitLines.ts';
export { terminalText } from './sheet/answer/terminalText.ts';
export { sheetSvg } from './sheet/sheetSvg.ts';
export { type ShapeName, waveNamed } from './signal/synthesis/waveNamed.ts';
export type { Assay } from './verdict/assay.ts';
export { type AssayOptions, assayCapture, type CaptureSource } from './verdict/assayCapture.ts';
export { parseClaim } from './verdict/claims/parseClaim.ts';
export { limitTables } from './verdict/limits/limitTables.ts';
export type { FailedResult, MeasureDocument, MeasureResult } from './verdict/measureDocument.ts';
export { parseNominal } from './verdict/nominal/parseNominal.ts';
export { type Synthesis, type SynthesisOptions, synthesise } from './verdict/synthetic/synthesise.ts';
