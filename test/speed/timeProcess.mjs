import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const usage = new URL('./usage.mjs', import.meta.url).href;

/**
 * Runs a program as a process of its own.
 *
 * @param program - a file beside this one; or several, of which the last is run and the others are imported before.
 * @returns what the whole process took (`wallMs`, `cpuMs`, `maxBytes`), and `work`: what the program itself printed
 * as the last line, where that is JSON.
 */
export async function timeProcess(program, ...words) {
  const files = [program].flat().map((file) => new URL(file, import.meta.url));
  const path = fileURLToPath(files.pop());
  const imports = [usage, ...files.map(({ href }) => href)].flatMap((href) => ['--import', href]);
  const start = performance.now();
  const child = spawn(process.execPath, [...imports, path, ...words], {
    stdio: ['ignore', 'pipe', 'inherit', 'pipe'],
  });
  const [printed, used] = await Promise.all([textOf(child.stdout), textOf(child.stdio[3]), endOf(child)]);
  const wallMs = performance.now() - start;
  const last = printed.trim().split('\n').at(-1) ?? '';
  return { wallMs, ...JSON.parse(used), work: last.startsWith('{') ? JSON.parse(last) : null };
}

async function textOf(stream) {
  let text = '';
  for await (const chunk of stream) text += chunk;
  return text;
}

function endOf(child) {
  return new Promise((done, fail) => {
    child.on('error', fail);
    child.on('close', (code) =>
      code === 0 ? done() : fail(new Error(`${child.spawnargs.at(-2)} ended with ${code}`)),
    );
  });
}
