import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { documentFaults } from './documentFaults.ts';
import { measuredResults } from './measuredResults.ts';
import { type CommandRun, runCommand } from './runCommand.ts';
import { sineChannels, smallCapture } from './smallCapture.ts';

const files = {
  'z-sine.csv': smallCapture(),
  'a-modified.csv': smallCapture({ shape: 'modified' }),
  'stairs.csv': smallCapture({ shape: 'staircase', layout: 'semicolon' }),
  'square.csv': smallCapture({ shape: 'square', layout: 'utf16' }),
  'clipped.csv': smallCapture({ shape: 'clipped', offsetV: 4 }),
  'direct.csv': smallCapture({ shape: 'dc' }),
  'noise.csv': smallCapture({ shape: 'noise' }),
  'amperes.csv': sineChannels([{ name: 'I1', unit: 'A', rms: 2 }]),
  'empty.csv': '',
};
const folder = benchFolder(files);
const named = Object.keys(files);
let run: CommandRun;

beforeAll(async () => {
  const claims = ['pure sine', '120 V ±5 %', 'THD < 3 %', '120 V'].flatMap((claim) => ['--claim', claim]);
  const told = ['--label', 'Inverter A', '--load', '300 W resistive'];
  run = await runCommand(['measure', '--json', ...claims, ...told, ...named], folder);
});

test('standard output is the document and nothing else', () => {
  expect(documentFaults(JSON.parse(run.stdout))).toEqual([]);
});

test('results stand in the order of the words', () => {
  expect(JSON.parse(run.stdout).results.map(({ file }: { file: string }) => file)).toEqual(named);
});

test('each result carries the digest of its file, the unit and the load', () => {
  for (const result of JSON.parse(run.stdout).results.slice(0, -1)) {
    const bytes = readFileSync(join(folder, result.file));
    expect(result.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
    expect(result.label).toBe('Inverter A');
    expect(result.load).toBe('300 W resistive');
  }
});

test('a wave has harmonics 1 to 50, direct voltage and noise have none and say why', () => {
  const { results } = JSON.parse(run.stdout);
  const orders = results.slice(0, 7).map((result: { voltage: { harmonics: unknown[] } }) => {
    return result.voltage.harmonics.length;
  });
  expect(orders).toEqual([50, 50, 50, 50, 50, 0, 0]);
  expect(results[5].voltage.frequencyHz.value).toBe(null);
  expect(results[6].voltage.thdPercent.value).toBe(null);
});

test('a file that is refused is in the document, on one line of standard error, and in the exit code', () => {
  expect(JSON.parse(run.stdout).results.at(-1).error.code).toBe('file.empty');
  expect(run.stderr).toMatch(/^empty\.csv: [^\n]+\n$/);
  expect(run.code).toBe(2);
});

test('only currents: current is filled, voltage absent, a notice says so', () => {
  const { results } = JSON.parse(run.stdout);
  const amperes = results.find(({ file }: { file: string }) => file === 'amperes.csv');
  expect(amperes).not.toHaveProperty('voltage');
  // 2 A; the file keeps seven digits.
  expect(Math.abs(amperes.current.rmsA.value - 2)).toBeLessThan(1e-5);
  expect(amperes.notices.map(({ code }: { code: string }) => code)).toContain('channels.currentOnly');
});

test('a current alone exits 0', async () => {
  const alone = await runCommand(['measure', '--json', 'amperes.csv'], folder);
  expect(alone.code).toBe(0);
  expect(measuredResults(alone)[0]?.waveform.kind).toBe('pure sine');
});

test.each([
  ['a missing key', 'voltage', (voltage: Record<string, unknown>) => delete voltage.rmsV],
  ['a bare number', 'voltage', (voltage: Record<string, unknown>) => Object.assign(voltage, { rmsV: 120 })],
  [
    'null without a reason',
    'voltage',
    (voltage: Record<string, unknown>) => Object.assign(voltage, { rmsV: { value: null } }),
  ],
  ['a hole in the orders', 'voltage', (voltage: { harmonics: unknown[] }) => voltage.harmonics.splice(7, 1)],
  [
    'an unknown kind',
    'waveform',
    (waveform: Record<string, unknown>) => Object.assign(waveform, { kind: 'sine' }),
  ],
] as const)('the checker of this file finds %s', (_, key, spoil) => {
  const document = JSON.parse(run.stdout);
  spoil(document.results[0][key]);
  expect(documentFaults(document)).not.toEqual([]);
});
