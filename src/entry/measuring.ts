/** From the bytes of a capture to its answer and its document. */
export { MeasureError } from '../base/measureError.ts';
export type { Capture, Channel } from '../capture/capture.ts';
export { fileAndChannel } from '../capture/joining/fileAndChannel.ts';
export { joinCurrent } from '../capture/joining/joinCurrent.ts';
export { type ReadCaptureOptions, readCapture } from '../capture/readCapture.ts';
export { readInChunks } from '../capture/reading/readInChunks.ts';
export type { ReadingPlan } from '../capture/reading/readingPlan.ts';
export { allLines } from '../sheet/answer/allLines.ts';
export { answerLines } from '../sheet/answer/answerLines.ts';
export { budgetLines } from '../sheet/answer/budgetLines.ts';
export { failureLine } from '../sheet/answer/failureLine.ts';
export { terminalText } from '../sheet/answer/terminalText.ts';
export { windowLines } from '../sheet/answer/windowLines.ts';
export { jsonText } from '../sheet/jsonText.ts';
export type { Assay } from '../verdict/assay.ts';
export { assayCapture } from '../verdict/assayCapture.ts';
export type { AssayOptions, CaptureSource } from '../verdict/assaying/assayOptions.ts';
export type { FailedResult, MeasureDocument, MeasureResult } from '../verdict/measureDocument.ts';
