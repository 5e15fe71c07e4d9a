import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { BenchDocument } from '../../src/bench/benchDocument.ts';
import { loadCapture } from '../bench/loadCapture.ts';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { sineChannels, smallCapture } from './smallCapture.ts';

/** A folder's name that tells what nobody should read in a review. */
const TELLING = 'Quarrel-with-Maker';

const folder = benchFolder({
  [`${TELLING}/save1/wave.csv`]: smallCapture({ cycles: 3 }),
  [`${TELLING}/save2/wave.csv`]: smallCapture({ cycles: 3, seed: 2, rmsV: 118 }),
  [`${TELLING}/step.csv`]: loadCapture({ loadW: 900 }),
  [`${TELLING}/volts.csv`]: sineChannels([{ name: 'Output', unit: 'V', rms: 120 }]),
  [`${TELLING}/amperes.csv`]: sineChannels([{ name: 'Clamp', unit: 'A', rms: 2 }]),
  [`${TELLING}/scope.yaml`]: 'gainPercent: 1\n',
  [`${TELLING}/broken.csv`]: 'no numbers\n',
  [`${TELLING}/plan.yaml`]: `instrument: scope.yaml
earlier: [out/first/bench.json]
units:
  - name: red
    claims: [pure sine, power 900 W]
    captures:
      - { file: save1/wave.csv, load: 0 }
      - { file: save2/wave.csv, load: 300 W }
      - { file: broken.csv, load: 600 W }
    steps:
      - { file: step.csv, from: 0 W, to: 900 W }
`,
});
const inside = join(folder, TELLING);

/** All that lies under a folder, by path within it. */
function filesIn(path: string): readonly (readonly [name: string, text: string])[] {
  return readdirSync(path, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => [entry.name, readFileSync(join(entry.parentPath, entry.name), 'latin1')] as const);
}

test('nothing that is written to be published names a folder; two captures of one name are told apart', async () => {
  const formats = ['--html', '--markdown', '--csv'];
  const first = [
    'bench',
    `0W=${inside}/save1/wave.csv`,
    `300W=${inside}/save2/wave.csv`,
    '--out',
    'out/first',
  ];
  await runCommand(first, inside);
  await runCommand(
    ['bench', join(inside, 'plan.yaml'), '--sheets', ...formats, '--out', 'out/bench'],
    inside,
  );
  const captures = ['save1', 'save2', 'step.csv'].map((name) => join(inside, name));
  await runCommand(['report', ...captures, ...formats, '--card', '--out', 'out/report'], inside);
  const joined = [join(inside, 'volts.csv'), '--current', join(inside, 'amperes.csv')];
  await runCommand(
    ['report', ...joined, ...formats, '--instrument', join(inside, 'scope.yaml'), '--out', 'out/i'],
    inside,
  );
  const [one, two] = ['save1', 'save2'].map((save) => join(inside, save, 'wave.csv')) as [string, string];
  await runCommand(['compare', one, two, '--out', 'out/compare'], inside);

  const written = filesIn(join(inside, 'out'));
  expect(written.filter(([name]) => name.endsWith('.svg')).length).toBeGreaterThan(10);
  for (const [name, text] of written) {
    expect.soft(name).not.toMatch(/save[12]/);
    for (const telling of [TELLING, 'save1', 'save2', folder])
      expect.soft(text.includes(telling), name).toBe(false);
  }
  const names = written.map(([name]) => name);
  expect(names.filter((name) => /^wave-[0-9a-f]{8}\.svg$/.test(name))).toHaveLength(4);

  const bench = JSON.parse(readFileSync(join(inside, 'out/bench/bench.json'), 'utf8')) as BenchDocument;
  const points = bench.units[0]!.points;
  expect(points.map(({ file, sha256 }) => file === `wave.csv (${sha256.slice(0, 8)})`)).toEqual([true, true]);
  expect(bench.failures.map(({ file }) => file)).toEqual(['broken.csv']);
  expect(bench.units[1]!.earlier).toBe('bench.json');

  // Captures are found by their digests, wherever they lie.
  for (const sheet of ['out/bench/sweep-red.svg', 'out/i/volts.svg']) {
    const current = sheet.includes('/i/') ? ['--current', join(inside, 'amperes.csv')] : [];
    const again = await runCommand(['recheck', sheet, inside, ...current], inside);
    expect([sheet, again.stdout]).toEqual([sheet, expect.stringContaining('The same')]);
  }
}, 300_000);

test('measure --json keeps the path as given', async () => {
  const path = join(inside, 'volts.csv');
  const { stdout } = await runCommand(['measure', '--json', path], inside);
  expect(JSON.parse(stdout).results[0].file).toBe(path);
});
