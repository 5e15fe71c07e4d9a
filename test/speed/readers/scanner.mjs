// Our scanner alone, by one thread: bytes into columns of numbers, once the layout is known; no digest.
import { openSync, statSync } from 'node:fs';
import { fileSource } from '../../../dist/cli/reading/fileSource.js';
import { readInChunks } from '../../../dist/entry/measuring.js';
import { chunkReader, readShare } from '../../../dist/entry/reading.js';
import { timeWork } from './timeWork.mjs';

const [, , file] = process.argv;
const source = fileSource(openSync(file), statSync(file).size);
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
