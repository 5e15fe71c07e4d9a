/** From the bytes of a capture to its answer and its document. */

export type { Assay } from '../assay/assay.ts';
export { assayCapture } from '../assay/assayCapture.ts';
export type { AssayOptions, CaptureSource } from '../assay/assayOptions.ts';
export { completeOptions, type ToldOptions } from '../assay/assayOptions.ts';
export type { AssayResult, FailedResult, MeasureDocument, MeasureResult } from '../assay/measureDocument.ts';
export type { Figure } from '../base/figure.ts';
export { type ErrorData, errorData, errorOf, MeasureError, wordedError } from '../base/measureError.ts';
export { admitPartly, type Schema } from '../base/schema.ts';
export type { Claim } from '../judge/claims/claim.ts';
export type { Instrument } from '../measure/doubt/instrument.ts';
export type { Capture, Channel } from '../read/capture.ts';
export { readInChunks } from '../read/chunks/readInChunks.ts';
export type { ReadingPlan } from '../read/chunks/readingPlan.ts';
export { fileAndChannel, joinCurrent } from '../read/joinCurrent.ts';
export { type ReadCaptureOptions, readCapture } from '../read/readCapture.ts';
export { measuredNames, rescaleCapture } from '../read/rescaleCapture.ts';
export { selectVoltageChannels } from '../read/selectChannel.ts';
export { allLines, budgetLines, windowLines } from '../words/allLines.ts';
export { answerLines } from '../words/answerLines.ts';
export { briefly, errorWords } from '../words/errors/errorWords.ts';
export { fieldOf, flagOf } from '../words/optionNames.ts';
export { failureLine } from '../words/rankNotices.ts';
export { jsonText, terminalText } from '../words/text.ts';
export { worded } from '../words/worded.ts';
