import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const capture = smallCapture({ cycles: 3 });
const folder = benchFolder({
  'two words.csv': capture,
  'it\'s "quoted".csv': capture,
  'Ausgang-ü-出力.csv': capture,
  '-dash.csv': capture,
  'one[1].csv': capture,
  'evening/10.csv': capture,
  'evening/2.CSV': capture,
  'evening/later/3.txt': capture,
  'evening/readme.md': '# no capture\n',
});

async function filesOf(...words: string[]): Promise<readonly string[]> {
  const { stdout } = await runCommand(['measure', '--json', ...words], folder);
  return JSON.parse(stdout).results.map(({ file }: { file: string }) => file);
}

test('a folder stands for all captures under it, 2 before 10, and one named twice is measured once', async () => {
  expect(await filesOf('evening/10.csv', 'evening')).toEqual([
    'evening/10.csv',
    'evening/2.CSV',
    'evening/later/3.txt',
  ]);
});

test('a pattern that the shell leaves alone is expanded; a file of that very name goes first', async () => {
  expect(await filesOf('evening/*.{csv,CSV}', '*[1].csv', 'one[1].csv')).toEqual([
    'evening/2.CSV',
    'evening/10.csv',
    'one[1].csv',
  ]);
});

test('blanks, quotes, letters of all alphabets and a leading dash do no harm', async () => {
  const names = ['two words.csv', 'it\'s "quoted".csv', 'Ausgang-ü-出力.csv', '-dash.csv'];
  const run = await runCommand(['report', '--out', 'sheets', '--', ...names], folder);
  expect(run.stderr).toBe('');
  expect(run.code).toBe(0);
  expect(readdirSync(join(folder, 'sheets')).sort()).toEqual([
    '-dash.svg',
    'Ausgang-ü-出力.svg',
    'index.html',
    'it_s_quoted_.svg',
    'two_words.svg',
  ]);
});
