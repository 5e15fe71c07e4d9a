import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { BenchDocument } from '../../src/bench/benchDocument.ts';
import { loadCapture } from '../bench/loadCapture.ts';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';

const folder = benchFolder({
  'idle.csv': loadCapture({ loadW: 1, underV: 120, seed: 3 }),
  'lost.csv': loadCapture({ loadW: 1500, underV: 115, lostS: 0.14 }),
  'lost-current.csv': loadCapture({ loadW: 1500, underV: 115, lostS: 0.14, withCurrent: true }),
  'held.csv': loadCapture({ loadW: 1500, beforeV: 115, underV: 115, seed: 6 }),
});

test.each(['lost.csv', 'lost-current.csv'])(
  'a unit that shuts off under its rated power fails it: %s',
  async (file) => {
    const words = [
      'bench',
      '0W=idle.csv',
      `1500W=${file}`,
      '--claim',
      'power 1500 W',
      '--markdown',
      '--out',
      `${file}-out`,
    ];
    const { code, stdout } = await runCommand(words, folder);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^The unit under test\n {2}Output lost /);
    // Lines are broken where they are full.
    const said = stdout.replaceAll(/\s+/g, ' ');
    expect(said).toContain('“power 1500 W” fails (output lost');
    expect(said).toContain('Say: The unit under test: output lost');
    const text = readFileSync(join(folder, `${file}-out`, 'bench.json'), 'utf8');
    const [unit] = (JSON.parse(text) as BenchDocument).units;
    const [overload] = unit!.overloads!;
    expect(overload).toMatchObject({ lost: true, seen: 'output lost', file });
    // The load came on at 0 s and was lost at 0.14 s, of a half cycle's doubt.
    expect(overload!.heldS.value).toBeGreaterThan(0.13);
    expect(readFileSync(join(folder, `${file}-out`, 'bench.md'), 'utf8')).toContain('| output lost |');
  },
  120_000,
);

test('one that holds it while the capture lasts probably holds: seconds seen are said', async () => {
  const words = [
    'bench',
    '0W=idle.csv',
    '1500W=held.csv',
    '--claim',
    'power 1500 W',
    '--claim',
    '120 V ±10 %',
  ];
  const { code, stdout } = await runCommand([...words, '--out', 'held'], folder);
  expect(code).toBe(0);
  expect(stdout.replaceAll(/\s+/g, ' ')).toContain('“power 1500 W” probably holds (0.4 s seen');
}, 120_000);

test.each(['power 600 W', 'surge 1.2 kW', 'capacity 500 Wh', 'efficiency > 85%'])(
  '“%s” given to measure is pointed to bench',
  async (claim) => {
    const { code, stderr } = await runCommand(['measure', 'idle.csv', '--claim', claim], folder);
    expect([code, stderr]).toEqual([2, expect.stringContaining('sineassay bench')]);
  },
);
