import type { ByteSource } from '../../bytes/byteSource.ts';
import { lineStart } from '../../bytes/scanning/lineStart.ts';
import { ROWS_AHEAD, type ScannedChunk, scanChunk } from '../../bytes/scanning/scanChunk.ts';
import { type StampRun, stampRun } from '../time/stampRun.ts';
import type { ReadingPlan } from './readingPlan.ts';

/** What a thread has to know to read chunks: plain data. */
export type ChunkPlan = Pick<ReadingPlan, 'scan' | 'uses'>;

/** One chunk of the body, read. */
export interface ReadChunk extends ScannedChunk {
  /** Null where no column is reduced to its line. */
  readonly stamps: StampRun | null;
}

/** One array for each of the table's columns, that grow where a chunk holds more rows than most. */
export type ChunkColumns = Float64Array[];

/** Reads chunks, one after the other. */
export interface ChunkReader {
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
