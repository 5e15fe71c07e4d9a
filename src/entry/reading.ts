/** From a file that is not in memory to a capture, by one thread or several. Loads little, for each thread loads it. */
export { type ErrorData, errorData, errorOf, MeasureError, wordedError } from '../base/measureError.ts';
export type { Capture } from '../read/capture.ts';
export {
  type ChunkPlan,
  chunkReader,
  FAILURES,
  NEXT_CHUNK,
  type NumberedChunk,
  type SharedScanState,
  scanClaimedChunks,
} from '../read/chunks/scanClaimedChunks.ts';
export type { ByteSource } from '../read/text/textAccess.ts';
