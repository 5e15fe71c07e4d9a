// A native table reader: reads the file into columns of numbers, and ends.
import polars from 'nodejs-polars';
import { timeWork } from './timeWork.mjs';

const [, , file] = process.argv;
await timeWork(() => polars.readCSV(file, { skipRows: 1 }).height);
