/** From a file that is not in memory to a capture, by one thread or several. Loads little, for each thread loads it. */
export { MeasureError } from '../base/measureError.ts';
export type { ByteSource } from '../bytes/byteSource.ts';
export type { Capture } from '../capture/capture.ts';
export { type ChunkPlan, chunkReader } from '../capture/reading/chunkReader.ts';
export { type NumberedChunk, readShare } from '../capture/reading/readShare.ts';
export { FAILURES, NEXT_CHUNK, type ScanBoard } from '../capture/reading/scanBoard.ts';
