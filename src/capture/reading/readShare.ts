import type { ChunkColumns, ChunkReader, ReadChunk } from './chunkReader.ts';
import { FAILURES, NEXT_CHUNK, type ScanBoard } from './scanBoard.ts';

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
export async function readShare(
  { newColumns, readChunk }: ChunkReader,
  board: ScanBoard,
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
