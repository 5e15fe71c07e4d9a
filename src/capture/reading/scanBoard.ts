import { chunkCount } from '../../bytes/scanning/scanPlan.ts';
import type { ChunkPlan } from './chunkReader.ts';

/** What threads that read one file share: who reads what, and where its rows go. Plain data over shared memory. */
export interface ScanBoard {
  /** The next chunk that nobody has taken; how many threads have failed. */
  readonly counters: Int32Array;
  /** How many rows each chunk holds; −1 until it is read. */
  readonly rowCounts: Int32Array;
  /** One array for each of the table's columns; null where a column is not kept. */
  readonly columns: readonly (Float64Array | null)[];
  /** Rows that the columns hold. */
  readonly capacity: number;
}

export const NEXT_CHUNK = 0;
export const FAILURES = 1;

/**
 * @param capacity - rows that there is room for, those of the tail among them. Room takes memory only where rows
 * are written.
 */
export function scanBoard(plan: ChunkPlan, capacity: number): ScanBoard {
  return {
    counters: new Int32Array(sharedMemory(8)),
    rowCounts: new Int32Array(sharedMemory(4 * chunkCount(plan.scan))).fill(-1),
    columns: plan.uses.map((use) => (use === 'kept' ? new Float64Array(sharedMemory(8 * capacity)) : null)),
    capacity,
  };
}

/** A page that was opened from a file has none that is shared; there one thread reads alone. */
function sharedMemory(byteLength: number): ArrayBufferLike {
  return typeof SharedArrayBuffer === 'undefined'
    ? new ArrayBuffer(byteLength)
    : new SharedArrayBuffer(byteLength);
}
