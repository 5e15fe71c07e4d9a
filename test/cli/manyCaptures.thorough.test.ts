import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const folder = mkdtempSync(join(tmpdir(), 'sineassay-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('many captures, measured beside each other, come out as each alone, in order', async () => {
  const names = ['a.csv', 'b.csv', 'broken.csv', 'c.csv', 'd.csv'];
  names.forEach((name, i) => {
    const capture = name === 'broken.csv' ? 'no rows' : smallCapture({ rmsV: 100 + i });
    writeFileSync(join(folder, name), capture);
  });
  const words = ['measure', '--json', '--voltage', 'all'];
  const together = await runCommand([...words, ...names, 'missing.csv'], folder);
  expect(together.code).toBe(2);
  expect(together.stderr.match(/^.*(broken|missing)\.csv/gm)?.length).toBe(2);
  const alone = [];
  for (const name of [...names, 'missing.csv']) {
    const { stdout } = await runCommand([...words, name], folder);
    alone.push(...JSON.parse(stdout).results);
  }
  expect(JSON.parse(together.stdout).results).toEqual(alone);
});
