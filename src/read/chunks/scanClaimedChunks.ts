import { lineStart, ROWS_AHEAD, type ScannedChunk, scanChunk } from '../table/scanRows.ts';
import type { ByteSource } from '../text/textAccess.ts';
import { type StampRun, stampRun } from '../time/stampLine.ts';
import type { ReadingPlan } from './readingPlan.ts';

/** A chunk, and which it is. */
export type NumberedChunk = ReadChunk & { readonly chunk: number };

/** Chunks that a thread has read and can't place yet, at most: others still read those before them. */
const MOST_WAITING = 4;
/** Longest wait for another thread's chunk before looking whether it failed. */
const WAIT_MS = 5;

/**
 * Reads chunks that nobody else has taken until none is left, and writes their rows behind those of the chunks
 * before them. All threads of one file do this at once.
 *
 * @param pause - waited for between chunks, so that a thread can attend to other things.
 * @returns the chunks that this thread read. Where the board has no room for their rows, these are left out, and
 * `rowCounts` tells how much they take.
 */
export async function scanClaimedChunks(
  { newColumns, readChunk }: ChunkReader,
  board: SharedScanState,
  pause: () => Promise<void>,
): Promise<readonly NumberedChunk[]> {
  const { counters, rowCounts, capacity } = board;
  const read: NumberedChunk[] = [];
  const waiting: { readonly chunk: number; readonly columns: ChunkColumns }[] = [];
  const free = [newColumns()];
  /** The first chunk whose rows aren't known to be counted, and the rows before it. */
  let uncounted = 0;
  let rowsBefore = 0;

  /** Writes the rows of those chunks before which all are counted. */
  const place = (): void => {
    for (let next = waiting[0]; next !== undefined; next = waiting[0]) {
      for (; uncounted < next.chunk; uncounted++) {
        const count = Atomics.load(rowCounts, uncounted);
        if (count < 0) return;
        rowsBefore += count;
      }
      const { columns } = next;
      const count = rowCounts[next.chunk]!;
      const from = rowsBefore;
      if (from + count <= capacity)
        board.columns.forEach((column, k) => {
          column?.set(columns[k]!.subarray(0, count), from);
        });
      free.push(columns);
      waiting.shift();
    }
  };
  /** Until fewer chunks wait than so many; false where a thread has failed, and its chunk never comes. */
  const placeAllBut = async (most: number): Promise<boolean> => {
    for (place(); waiting.length > most; place()) {
      if (Atomics.load(counters, FAILURES) > 0) return false;
      Atomics.wait(rowCounts, uncounted, -1, WAIT_MS);
      await pause();
    }
    return true;
  };

  try {
    for (;;) {
      const chunk = Atomics.add(counters, NEXT_CHUNK, 1);
      if (chunk >= rowCounts.length) break;
      const columns = free.pop() ?? newColumns();
      const part = readChunk(chunk, columns);
      read.push({ ...part, chunk });
      waiting.push({ chunk, columns });
      Atomics.store(rowCounts, chunk, part.rowCount);
      Atomics.notify(rowCounts, chunk);
      if (!(await placeAllBut(MOST_WAITING))) return read;
      await pause();
    }
    await placeAllBut(0);
    return read;
  } catch (error) {
    Atomics.add(counters, FAILURES, 1);
    throw error;
  }
}

/** What a thread has to know to read chunks: plain data. */
export type ChunkPlan = Pick<ReadingPlan, 'scan' | 'uses'>;

/** One chunk of the body, read. */
interface ReadChunk extends ScannedChunk {
  /** Null where no column is reduced to its line. */
  readonly stamps: StampRun | null;
}

/** One array for each of the table's columns, that grow where a chunk holds more rows than most. */
type ChunkColumns = Float64Array[];

/** Reads chunks, one after the other. */
interface ChunkReader {
  readonly newColumns: () => ChunkColumns;
  /** @param into - its rows are written there. */
  readonly readChunk: (chunk: number, into: ChunkColumns) => ReadChunk;
}

/** Bytes behind a chunk in which its last row is thought to end. */
const OVERLAP = 1 << 12;
const LINE_FEED = 10;

export function chunkReader(source: ByteSource, { scan, uses }: ChunkPlan): ChunkReader {
  const { table, from: bodyFrom, to: bodyTo, chunkLength, chunkRows } = scan;
  const newColumns = (): ChunkColumns => table.columns.map(() => new Float64Array(chunkRows + ROWS_AHEAD));
  const stampColumn = uses.indexOf('stamps');
  let buffer: Uint8Array = new Uint8Array(0);

  /** The byte before a chunk, the chunk, the end of its last row, and a line end behind. */
  const load = (from: number, to: number): Uint8Array => {
    for (let overlap = OVERLAP; ; overlap *= 4) {
      const end = Math.min(bodyTo, to + overlap);
      const length = 1 + end - from;
      if (buffer.length <= length) buffer = new Uint8Array(length + 1);
      // Before the body it is as if a line had ended.
      if (from === bodyFrom) buffer[0] = LINE_FEED;
      const lead = from === bodyFrom ? 1 : 0;
      source.read(from + lead - 1, buffer.subarray(lead, length));
      buffer[length] = LINE_FEED;
      // Within a row that is longer than a chunk: whoever reads its start reads all of it.
      const isWithinRow = lineStart(buffer.subarray(0, length), 1) >= 1 + to - from;
      if (isWithinRow || end === bodyTo || lineStart(buffer.subarray(0, length), 1 + to - from) < length)
        return buffer.subarray(0, length + 1);
    }
  };

  const readChunk = (chunk: number, columns: ChunkColumns): ReadChunk => {
    const from = bodyFrom + chunk * chunkLength;
    const to = Math.min(bodyTo, from + chunkLength);
    const bytes = load(from, to);
    const scanned = scanChunk(bytes, lineStart(bytes, 1), 1 + to - from, scan, { columns, rowCount: 0 });
    const stamps = stampColumn < 0 ? null : stampRun(columns[stampColumn]!.subarray(0, scanned.rowCount));
    return { ...scanned, stamps };
  };
  return { newColumns, readChunk };
}

/** What threads that read one file share: who reads what, and where its rows go. Plain data over shared memory. */
export interface SharedScanState {
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
export function sharedScanState(plan: ChunkPlan, capacity: number): SharedScanState {
  const { from, to, chunkLength } = plan.scan;
  const chunkCount = Math.ceil((to - from) / chunkLength);
  return {
    counters: new Int32Array(sharedMemory(8)),
    rowCounts: new Int32Array(sharedMemory(4 * chunkCount)).fill(-1),
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
