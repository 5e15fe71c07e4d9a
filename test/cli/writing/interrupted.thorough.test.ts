import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, inject, test } from 'vitest';
import { benchFolder } from '../benchFolder.ts';

test.each(['SIGINT', 'SIGTERM'] as const)(
  '%s in the middle of a write removes the part and ends the process by that signal',
  async (signal) => {
    const part = join(benchFolder({}), 'sheet.svg.part');
    const module = pathToFileURL(join(inject('modules'), 'writing', 'writeOutput.js')).href;
    const code = `
      import { writeFileSync } from 'node:fs';
      import { removedOnSignal } from ${JSON.stringify(module)};
      await removedOnSignal(process.argv[1], async () => {
        writeFileSync(process.argv[1], 'half of a sheet');
        process.stdout.write('writing');
        await new Promise((done) => setTimeout(done, 30_000));
      });`;
    const child = spawn(process.execPath, ['--input-type=module', '--eval', code, part], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(child.stdout, 'data');
    expect(existsSync(part)).toBe(true);
    child.kill(signal);
    const [, endedBy] = await once(child, 'exit');
    expect(endedBy).toBe(signal);
    expect(existsSync(part)).toBe(false);
  },
);

test('Ctrl-C between sheets leaves whole sheets and nothing else', async () => {
  const folder = benchFolder({});
  const [out, temporary] = [join(folder, 'reports'), join(folder, 'temporary')];
  mkdirSync(temporary);
  const child = spawn(process.execPath, [inject('command'), 'report', resolve('captures'), '--out', out], {
    env: { ...process.env, TMPDIR: temporary },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  // The answer is printed once its sheet stands.
  await once(child.stdout, 'data');
  child.kill('SIGINT');
  const [, endedBy] = await once(child, 'exit');
  expect(endedBy).toBe('SIGINT');
  expect(readdirSync(temporary)).toEqual([]);
  const sheets = readdirSync(out);
  expect(sheets.length).toBeGreaterThan(0);
  for (const sheet of sheets) expect(readFileSync(join(out, sheet), 'utf8').trimEnd()).toMatch(/<\/svg>$/);
});

test('a pipe gets no progress, however long the run', async () => {
  const child = spawn(process.execPath, [inject('command'), 'measure', resolve('captures')], {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  await once(child, 'close');
  expect(said).not.toContain('\x1b');
  expect(said).not.toContain(' of ');
});
