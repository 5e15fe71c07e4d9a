import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, inject, test } from 'vitest';
import * as core from '../../src/index.ts';
import { runCommand } from './runCommand.ts';

// Inside the built package, where its own name leads to it, as it does for who installs it.
const folder = mkdtempSync(join(dirname(inject('command')), '..', '..', 'program-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('the README’s program measures a capture and writes a sheet that a recheck calls the same', async () => {
  const [, code = ''] =
    /## From a program[\s\S]*?```js\n([\s\S]*?)```/.exec(readFileSync('README.md', 'utf8')) ?? [];
  const capture = 'captures/b-blue-300w.csv';
  writeFileSync(
    join(folder, 'program.mjs'),
    code.replaceAll(`'${capture}'`, JSON.stringify(resolve(capture))),
  );
  const said = execFileSync(process.execPath, ['program.mjs'], { cwd: folder, encoding: 'utf8' });
  expect(said).toMatch(/^modified sine \{ value: 45\.8/);
  const checked = await runCommand(['recheck', join(folder, 'b-blue-300w.svg'), resolve(capture)], folder);
  expect(checked.stdout).toContain('every value agrees');
  expect(checked.code).toBe(0);
});

test('what the package offers is added to, and nothing is taken away', async () => {
  const door = pathToFileURL(join(dirname(inject('command')), 'package.js')).href;
  const own = Object.keys(await import(/* @vite-ignore */ door)).sort();
  expect({ sineassay: own, 'sineassay/core': Object.keys(core).sort() }).toMatchSnapshot();
});
