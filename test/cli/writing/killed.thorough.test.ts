import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, inject, test } from 'vitest';

/** Longer than one write of the system takes, so that a kill can fall into it. */
const contentBytes = 3_000_000;

/** Writes file after file until it is killed; says when the first stands. */
const writer = (): string => `
  import { writeWhole } from ${JSON.stringify(pathToFileURL(join(inject('modules'), 'writing', 'writeOutput.js')).href)};
  const content = Buffer.alloc(${contentBytes}, 'sineassay ');
  for (let n = 0; ; n++) {
    await writeWhole(process.argv[1] + '/sheet-' + (n % 5) + '.svg', content);
    if (n === 0) process.stdout.write('writing');
  }`;

test('a process killed while it writes leaves no partial file, 200 times over', async () => {
  const code = writer();
  const parent = mkdtempSync(join(tmpdir(), 'killed-'));
  let files = 0;
  for (let round = 0; round < 200; round++) {
    const folder = mkdtempSync(join(parent, 'results-'));
    const child = spawn(process.execPath, ['--input-type=module', '--eval', code, folder], {
      // A folder for temporary files of its own, on the same disk.
      env: { ...process.env, TMPDIR: parent },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(child.stdout, 'data');
    await new Promise((done) => setTimeout(done, (round * 7) % 23));
    child.kill('SIGKILL');
    await once(child, 'exit');
    for (const name of readdirSync(folder)) {
      files++;
      expect(name).toMatch(/^sheet-\d\.svg$/);
      expect(readFileSync(join(folder, name)).length).toBe(contentBytes);
    }
    rmSync(folder, { recursive: true });
  }
  expect(files).toBeGreaterThanOrEqual(200);
  rmSync(parent, { recursive: true });
}, 600_000);
