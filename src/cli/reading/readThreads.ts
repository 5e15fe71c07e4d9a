import { Worker } from 'node:worker_threads';
import {
  type ByteSource,
  type ChunkPlan,
  chunkReader,
  type ErrorData,
  errorOf,
  FAILURES,
  NEXT_CHUNK,
  type NumberedChunk,
  type SharedScanState,
  scanClaimedChunks,
} from '../../entry/reading.ts';
import { digestOf, type FileReading } from './fileSource.ts';

/** What a worker is started with. */
export interface WorkerFile {
  readonly descriptor: number;
  readonly byteLength: number;
  /** Whether it takes the file's digest first. */
  readonly isDigester: boolean;
}

export interface WorkerTask {
  readonly plan: ChunkPlan;
  readonly board: SharedScanState;
}

export type WorkerReply =
  | { readonly chunks: readonly NumberedChunk[] }
  | { readonly sha256: string }
  | { readonly failed: ErrorData };

/** The threads that read one file: this one, and workers beside it. */
interface ReadThreads {
  readonly readChunks: (plan: ChunkPlan, board: SharedScanState) => Promise<readonly NumberedChunk[]>;
  readonly sha256: () => Promise<string>;
  readonly end: () => Promise<void>;
}

/**
 * @param workers - how many beside this thread. The first takes the file's digest while the others read.
 * @param readSoFar - told the share of the chunks that is taken.
 */
export function readThreads(
  descriptor: number,
  source: ByteSource,
  { workers: workerCount, readSoFar }: Pick<FileReading, 'workers' | 'readSoFar'>,
): ReadThreads {
  const { byteLength } = source;
  const workers = Array.from({ length: workerCount }, (_, i) =>
    startWorker({ descriptor, byteLength, isDigester: i === 0 }),
  );
  const digest = workers[0]?.next((reply) => ('sha256' in reply ? reply.sha256 : undefined));
  // Awaited later, when the rows are read; a failure shows there.
  digest?.catch(() => {});
  return {
    readChunks: async (plan, board) => {
      const { scan, uses } = plan;
      const others = workers.map((worker) => {
        worker.post({ plan: { scan, uses }, board });
        const chunks = worker.next((reply) => ('chunks' in reply ? reply.chunks : undefined));
        // Nobody waits for a chunk whose thread is gone.
        chunks.catch(() => Atomics.add(board.counters, FAILURES, 1));
        return chunks;
      });
      const own = scanClaimedChunks(chunkReader(source, plan), board, () => {
        readSoFar(Math.min(1, Atomics.load(board.counters, NEXT_CHUNK) / board.rowCounts.length));
        return nextTurn();
      });
      const shares = [...others, own];
      // The file is closed when one has failed: none may read on then.
      await Promise.allSettled(shares);
      return (await Promise.all(shares)).flat();
    },
    sha256: async () => digest ?? digestOf(source),
    end: async () => {
      await Promise.all(workers.map((worker) => worker.end()));
    },
  };
}

interface ReadWorker {
  readonly post: (task: WorkerTask) => void;
  /** The next reply that has what is asked for. */
  readonly next: <T>(pick: (reply: WorkerReply) => T | undefined) => Promise<T>;
  readonly end: () => Promise<unknown>;
}

function startWorker(file: WorkerFile): ReadWorker {
  const worker = new Worker(readWorkerFile, { workerData: file });
  return {
    post: (task) => worker.postMessage(task),
    next: (pick) =>
      new Promise((done, fail) => {
        const hear = (reply: WorkerReply): void => {
          const picked = pick(reply);
          if (picked === undefined && !('failed' in reply)) return;
          worker.off('message', hear);
          if (picked !== undefined) done(picked);
          else if ('failed' in reply) fail(errorOf(reply.failed));
        };
        worker.on('message', hear);
        worker.once('error', fail);
      }),
    end: () => worker.terminate(),
  };
}

function nextTurn(): Promise<void> {
  return new Promise((done) => setImmediate(done));
}

/** What threads start with. The command is built into files one folder deep, as this one is. */
const readWorkerFile: URL = new URL('../reading/readWorker.js', import.meta.url);
export const measureWorkerFile: URL = new URL('../reading/measureWorker.js', import.meta.url);
