import { parentPort, workerData } from 'node:worker_threads';
import { chunkReader, errorData, MeasureError, scanClaimedChunks } from '../../entry/reading.ts';
import { digestOf, fileSource } from './fileSource.ts';
import type { WorkerFile, WorkerReply, WorkerTask } from './readThreads.ts';

/** A thread that reads its share of a file, again for every plan that it is sent. */
const { descriptor, byteLength, isDigester } = workerData as WorkerFile;
const source = fileSource(descriptor, byteLength);
const port = parentPort!;
const reply = async (work: () => Promise<WorkerReply> | WorkerReply): Promise<void> => {
  try {
    port.postMessage(await work());
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    port.postMessage({ failed: errorData(error) } satisfies WorkerReply);
  }
};
port.on('message', ({ plan, board }: WorkerTask) =>
  reply(async () => ({
    chunks: await scanClaimedChunks(chunkReader(source, plan), board, () => Promise.resolve()),
  })),
);
if (isDigester) await reply(() => ({ sha256: digestOf(source) }));
