import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { sineChannels, smallCapture } from './smallCapture.ts';

const legs = [
  { name: 'CH 1', unit: 'V', rms: 120 },
  { name: 'CH/1', unit: 'V', rms: 119 },
];
const folder = benchFolder({
  'monday/wave.csv': smallCapture(),
  'tuesday/wave.csv': smallCapture({ shape: 'modified' }),
  'tuesday/broken.csv': 'no numbers\n',
  'tuesday/notes.md': 'no capture either\n',
  'captures/legs.csv': sineChannels(legs),
  'in-the-way': 'a file',
});

test('sheets of captures that share a name are told apart, and nothing else is written', async () => {
  const { code, stdout, stderr } = await runCommand(
    ['report', 'monday', 'tuesday', '--out', 'sheets', '--png'],
    folder,
  );
  expect(code).toBe(2);
  expect(stderr).toMatch(/^tuesday\/broken\.csv: [^\n]+\n$/);
  // By the first eight digits of their SHA-256: a folder's name is nothing to publish.
  const names = ['monday', 'tuesday'].map((day) => {
    const bytes = readFileSync(join(folder, day, 'wave.csv'));
    return `wave-${createHash('sha256').update(bytes).digest('hex').slice(0, 8)}`;
  });
  expect(readdirSync(join(folder, 'sheets')).sort()).toEqual(
    ['index.html', ...names.flatMap((name) => [`${name}.png`, `${name}.svg`])].sort(),
  );
  for (const name of names) {
    expect(stdout).toContain(`  Sheet: sheets/${name}.svg\n`);
    const svg = readFileSync(join(folder, 'sheets', `${name}.svg`), 'utf8');
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(svg).toContain('</svg>');
    // Width and height stand in the first block of a PNG file, big end first.
    const png = readFileSync(join(folder, 'sheets', `${name}.png`));
    expect(png.toString('latin1', 1, 4)).toBe('PNG');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1920, 1080]);
  }
});

test('without a capture it takes the folder captures and fills the folder reports, a sheet a channel', async () => {
  const { code, stderr } = await runCommand(['report', '--voltage', 'all', '--json'], folder);
  expect(stderr).toBe('');
  expect(code).toBe(0);
  expect(readdirSync(join(folder, 'reports')).sort()).toEqual([
    'index.html',
    'legs-CH_1-2.svg',
    'legs-CH_1.svg',
  ]);
});

test('where the sheets can’t be written the answer is still given', async () => {
  const words = ['report', 'monday/wave.csv', '--out', 'in-the-way'];
  const { code, stdout, stderr } = await runCommand(words, folder);
  expect(code).toBe(2);
  expect(stderr).toMatch(/^monday\/wave\.csv: in-the-way could not be written[^\n]*--out[^\n]*\n$/);
  expect(stdout).toMatch(/^monday\/wave\.csv\n/);
  expect(stdout).not.toContain('Sheet:');
});

test('a folder for the sheets is made only when there is one to write', async () => {
  const { code } = await runCommand(['report', 'tuesday/broken.csv', '--out', 'nothing'], folder);
  expect(code).toBe(2);
  expect(existsSync(join(folder, 'nothing'))).toBe(false);
});
