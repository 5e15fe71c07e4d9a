import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, expect, inject, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'start-up-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Packages and modules of the project that Node itself says a run imported. */
function loadedBy(...words: string[]): {
  readonly packages: readonly string[];
  readonly own: readonly string[];
} {
  const list = join(folder, 'modules.txt');
  rmSync(list, { force: true });
  const hook = pathToFileURL(resolve('test/cli/listModules.mjs')).href;
  const { status, stderr } = spawnSync(process.execPath, ['--import', hook, inject('command'), ...words], {
    env: { ...process.env, MODULE_LIST: list },
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const addresses = readFileSync(list, 'utf8').trim().split('\n');
  const packages = addresses.flatMap(
    (address) => /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(address)?.[1] ?? [],
  );
  return {
    packages: [...new Set(packages)].filter((name) => name !== '.cache').sort(),
    own: [...new Set(addresses.filter((address) => address.includes('/dist/')))].flatMap(modulesIn),
  };
}

/** The modules that a file of the built command is made of, as the bundler names each above its code. */
function modulesIn(address: string): readonly string[] {
  const code = readFileSync(fileURLToPath(address), 'utf8');
  return [...code.matchAll(/^\/\/(?:#region)? src\/(.*)\.ts$/gm)].map(([, name]) => name!);
}

test('--version loads no package and nothing of the project but the first file and the version', () => {
  expect(loadedBy('--version')).toEqual({ packages: [], own: ['cli/main', 'cli/program'] });
});

test.each([
  ['--help'],
  ['measure --help'],
  ['report --help'],
  ['bench --help'],
  ['limits --help'],
  ['synth --help'],
  ['selfcheck --help'],
])('%s loads the command line’s package alone', (words) => {
  expect(loadedBy(...words.split(' ')).packages).toEqual(['commander']);
});

const capture = resolve('captures/b-blue-300w.csv');

test('measure loads what reads and measures, and nothing that draws, plans or looks for files', () => {
  const { packages, own } = loadedBy('measure', capture);
  expect(packages).toEqual(['commander', 'csv-parse', 'fft.js', 'quickselect']);
  expect(own).toContain('assay/assayCapture');
  expect(own.filter((module) => /^(bench|draw|publish|synth)\//.test(module))).toEqual([]);
});

test('report loads what draws', () => {
  const { packages } = loadedBy('report', capture, '--out', folder);
  expect(packages).toEqual(expect.arrayContaining(['d3', 'jsdom']));
});
