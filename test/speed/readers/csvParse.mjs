// csv-parse as a stream, its cells turned into numbers.
import { createReadStream } from 'node:fs';
import { parse } from 'csv-parse';
import { timeWork } from './timeWork.mjs';

const [, , file] = process.argv;
await timeWork(async () => {
  const columns = [[], [], []];
  const parser = createReadStream(file).pipe(parse({ from_line: 3 }));
  parser.on('readable', () => {
    for (let row = parser.read(); row !== null; row = parser.read()) {
      for (let k = 0; k < columns.length; k++) columns[k].push(Number(row[k]));
    }
  });
  await new Promise((done, fail) => parser.on('end', done).on('error', fail));
  return columns[0].length;
});
