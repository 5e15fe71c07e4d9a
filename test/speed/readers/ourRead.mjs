// Our reading as the command does it: all threads, and the digest.
import { readFileCapture } from '../../../dist/cli/reading/readFileCapture.js';
import { timeWork } from './timeWork.mjs';

const [, , file] = process.argv;
await timeWork(async () => (await readFileCapture(file, {})).capture.sampleCount);
