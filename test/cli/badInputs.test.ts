import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { FailedResult } from '../../src/assay/measureDocument.ts';
import { randomNumbers } from '../../src/signal/randomNumbers.ts';
import { benchFolder } from './benchFolder.ts';
import { documentFaults } from './documentFaults.ts';
import { type CommandRun, runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const header = 'time (s),CH1 (V)\n';

/** Two thousand rows. */
function rows(row: (i: number) => string): string {
  return Array.from({ length: 2000 }, (_, i) => `${row(i)}\n`).join('');
}

const wave = (i: number): string => (170 * Math.sin(i * 0.0377)).toFixed(3);
const time = (i: number): string => (i * 1e-4).toFixed(4);

function noise(count: number): Uint8Array {
  const next = randomNumbers(3);
  return Uint8Array.from({ length: count }, () => Math.floor(256 * next()));
}

const pngStart = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52];

/** Name, content, code, and what its line on standard error must say. */
const bad: readonly (readonly [string, Uint8Array | string | null, string, RegExp])[] = [
  ['empty.csv', '', 'file.empty', /0 bytes/],
  ['binary.csv', noise(4000), 'file.binary', /text/],
  ['picture.csv', Uint8Array.from([...pngStart, ...noise(3000)]), 'file.foreign', /picture.*CSV/],
  ['page.csv', '<!DOCTYPE html>\n<html><body>Gone</body></html>\n', 'file.foreign', /web page/],
  ['diary.csv', 'Dear diary,\nit hummed all evening.\n'.repeat(30), 'rows.none', /rows of numbers/],
  ['header.csv', header, 'rows.none', /rows of numbers/],
  ['three.csv', `${header}0,1\n0.001,2\n0.002,1\n`, 'rows.few', /line 2.*3 rows/],
  ['still.csv', header + rows((i) => `0.5,${wave(i)}`), 'time.still', /line 2.*still/],
  [
    'back.csv',
    header + rows((i) => `${time(i < 1000 ? i : 2000 - i)},${wave(i)}`),
    'time.backwards',
    /line 1003.*back/,
  ],
  ['values.csv', rows(wave), 'time.none', /--sample-rate/],
  ['nan.csv', header + rows((i) => `${time(i)},nan`), 'values.none', /nan/],
  [
    'spectrum.csv',
    `Frequency (Hz),Magnitude (dB)\n${rows((i) => `${i * 10},${(-60 + Math.sin(i)).toFixed(2)}`)}`,
    'file.spectrum',
    /spectrum/,
  ],
  [
    'short.csv',
    header + rows((i) => `${(i * 1e-6).toFixed(6)},${wave(i / 100)}`),
    'wave.noPeriod',
    /5 ms\/div/,
  ],
  ['folder', null, 'folder.empty', /\.csv/],
];

const named = [...bad.map(([name]) => name), 'missing.csv', 'missing/', 'evening/*.csv'];
const folder = benchFolder({
  ...Object.fromEntries(bad.map(([name, content]) => [name, content])),
  'good.csv': smallCapture(),
});
let run: CommandRun;
let failures: readonly FailedResult[];

beforeAll(async () => {
  run = await runCommand(['report', '--json', '--out', 'sheets', ...named, 'good.csv'], folder);
  failures = JSON.parse(run.stdout).results.slice(0, -1);
});

test('exit code 2, one line on standard error for each, in order, and the document keeps its contract', () => {
  expect(run.code).toBe(2);
  const told = run.stderr.trimEnd().split('\n');
  expect(told.map((line) => line.replace(/[,:] .*/, ''))).toEqual(named);
  expect(documentFaults(JSON.parse(run.stdout))).toEqual([]);
});

test('nothing is written for them, and the good one among them is done', () => {
  expect(readdirSync(`${folder}/sheets`)).toEqual(['good.svg', 'index.html']);
  expect(JSON.parse(run.stdout).results.at(-1).waveform.kind).toBe('pure sine');
});

test('each line says what was expected, what was found where there is something, and what to do', () => {
  for (const line of run.stderr.trimEnd().split('\n')) {
    expect(line).toMatch(/^[^:]+: .+; expected .+\. [A-Z].+\.$/);
  }
});

describe.each(bad)('%s', (name, _, code, words) => {
  test(`is refused as ${code}`, () => {
    expect(failures.find(({ file }) => file === name)?.error.code).toBe(code);
    expect(run.stderr.split('\n').find((line) => line.startsWith(name))).toMatch(words);
  });
});

test.each([
  ['missing.csv', 'file.missing'],
  ['missing/', 'file.missing'],
  ['evening/*.csv', 'pattern.empty'],
])('%s, which is not there, is refused as %s', (name, code) => {
  expect(failures.find(({ file }) => file === name)?.error.code).toBe(code);
});
