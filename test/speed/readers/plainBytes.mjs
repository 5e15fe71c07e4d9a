// The bytes of the file and nothing else: no reader is faster.
import { openSync, readSync } from 'node:fs';
import { timeWork } from './timeWork.mjs';

const [, , path] = process.argv;
await timeWork(() => {
  const file = openSync(path);
  const block = new Uint8Array(1 << 20);
  let bytes = 0;
  for (let count = readSync(file, block); count > 0; count = readSync(file, block)) bytes += count;
  return bytes;
});
