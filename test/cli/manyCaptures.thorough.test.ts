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

test('as lines, whole or in shares, they are the results of the document, in order', async () => {
  const words = ['measure', ...['a.csv', 'b.csv', 'broken.csv', 'c.csv', 'd.csv']];
  const document = await runCommand([...words, '--json'], folder);
  const lines = async (...more: string[]): Promise<string[]> => {
    const { stdout, code } = await runCommand([...words, '--json-lines', ...more], folder);
    expect(code).toBe(stdout.includes('"error"') ? 2 : 0);
    return stdout.split('\n').slice(0, -1);
  };
  const whole = await lines();
  expect(whole.map((line) => JSON.parse(line))).toEqual(JSON.parse(document.stdout).results);
  const shares = [
    await lines('--share', '1/3'),
    await lines('--share', '2/3'),
    await lines('--share', '3/3'),
  ];
  expect(shares.map(({ length }) => length)).toEqual([2, 2, 1]);
  expect(whole.map((_, i) => shares[i % 3]![Math.floor(i / 3)])).toEqual(whole);
  expect(await lines('--share', '9/9')).toEqual([]);
});

test('a claim that fails is an exit code of lines too; a share is two whole numbers', async () => {
  const failing = await runCommand(['measure', 'a.csv', '--json-lines', '--claim', '230 V ±5 %'], folder);
  expect(failing.code).toBe(1);
  for (const share of ['0/3', '4/3', '1', 'x/y', '1.5/3']) {
    const { code, stderr } = await runCommand(['measure', 'a.csv', '--share', share], folder);
    expect([code, stderr.match(/expected, the first from 1 to the second/g)?.length]).toEqual([2, 1]);
  }
});
