import type { ChunkReader, ReadChunk } from './chunkReader.ts';
import { FAILURES, NEXT_CHUNK, type ScanBoard } from './scanBoard.ts';

/** A chunk, and which it is. */
export type NumberedChunk = ReadChunk & { readonly chunk: number };

/** Longest wait for another thread's chunk before looking whether it failed. */
const WAIT_MS = 5;

/**
 * Reads chunks that nobody else has taken until none is left, and writes their rows behind those of the chunks
 * before them. All threads of one file do this at once.
 *
 * @param pause - waited for between chunks, so that a thread can attend to other things.
 * @returns the chunks that this thread read; its rows go uncopied where the board has no room, and none is
 * lost: `rowsBefore` then tells how much it takes.
 */
export async function readShare(
  { readChunk, columns }: ChunkReader,
  board: ScanBoard,
  pause: () => Promise<void>,
): Promise<readonly NumberedChunk[]> {
  const chunks: NumberedChunk[] = [];
  const { counters, rowsBefore, capacity } = board;
  const count = rowsBefore.length - 1;
  try {
    for (;;) {
      const chunk = Atomics.add(counters, NEXT_CHUNK, 1);
      if (chunk >= count) break;
      const read = readChunk(chunk);
      while (Atomics.load(rowsBefore, chunk) < 0) {
        if (Atomics.load(counters, FAILURES) > 0) return chunks;
        Atomics.wait(rowsBefore, chunk, -1, WAIT_MS);
        await pause();
      }
      const from = Atomics.load(rowsBefore, chunk);
      const to = from + read.rowCount;
      Atomics.store(rowsBefore, chunk + 1, to);
      Atomics.notify(rowsBefore, chunk + 1);
      if (to <= capacity)
        board.columns.forEach((column, k) => {
          column?.set(columns[k]!.subarray(0, read.rowCount), from);
        });
      chunks.push({ ...read, chunk });
      await pause();
    }
  } catch (error) {
    Atomics.add(counters, FAILURES, 1);
    throw error;
  }
  return chunks;
}
