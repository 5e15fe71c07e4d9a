// Our scanner alone, by one thread: bytes into columns of numbers, once the layout is known; no digest.
import { openSync, readSync, statSync } from 'node:fs';
import { readInChunks } from '../../../dist/core/measuring.js';
import { chunkReader, readShare } from '../../../dist/core/reading.js';
import { timeWork } from './timeWork.mjs';

const [, , file] = process.argv;
const descriptor = openSync(file);
const byteLength = statSync(file).size;
const source = {
  byteLength,
  read: (from, into) => readSync(descriptor, into, 0, Math.min(into.length, byteLength - from), from),
};
await readInChunks(source, {
  readChunks: async (plan, board) => {
    let chunks = [];
    await timeWork(async () => {
      chunks = await readShare(chunkReader(source, plan), board, () => Promise.resolve());
      return chunks.reduce((sum, chunk) => sum + chunk.rowCount, 0);
    });
    return chunks;
  },
});
