// Our scanner by one thread: rows of numbers into arrays, the time reduced to its line, no digest.
import { openSync, statSync } from 'node:fs';
import { fileSource } from '../../../dist/cli/reading/fileSource.js';
import { readInChunks } from '../../../dist/entry/measuring.js';
import { chunkReader, readShare } from '../../../dist/entry/reading.js';
import { timeWork } from './timeWork.mjs';

const [, , file] = process.argv;
await timeWork(async () => {
  const source = fileSource(openSync(file), statSync(file).size);
  const capture = await readInChunks(source, {
    readChunks: (plan, board) => readShare(chunkReader(source, plan), board, () => Promise.resolve()),
  });
  return capture.sampleCount;
});
