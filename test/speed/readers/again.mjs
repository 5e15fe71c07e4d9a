// Captures read and measured in turn, over and over in one process: what each takes once all code is compiled.
import { readFileCapture } from '../../../dist/cli/reading/readFileCapture.js';
import { assayCapture } from '../../../dist/core/index.js';

const [, , rounds, threads, ...files] = process.argv;
/** A thread beside this one starts anew for each file, and compiles its code anew. */
const reading = threads === 'one' ? { workers: 0 } : {};
const cpuMs = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Time of all cores for reading and for measuring one file, and both on the clock. */
async function timed(file) {
  const start = performance.now();
  const begun = cpuMs();
  const { capture, sha256 } = await readFileCapture(file, {}, reading);
  const readWallMs = performance.now() - start;
  const read = cpuMs();
  assayCapture(capture, { file, sha256 }, { scalesInPlace: true });
  return {
    readMs: read - begun,
    measureMs: cpuMs() - read,
    readWallMs,
    measureWallMs: performance.now() - start - readWallMs,
  };
}

const runs = files.map(() => []);
for (let round = 0; round < Number(rounds); round++) {
  for (const [i, file] of files.entries()) runs[i].push(await timed(file));
}
process.stdout.write(`${JSON.stringify({ runs })}\n`);
