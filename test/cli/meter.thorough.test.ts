import { expect, test } from 'vitest';
import type { MeasureResult } from '../../src/assay/measureDocument.ts';
import { benchFolder } from './benchFolder.ts';
import { measuredResults } from './measuredResults.ts';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const folder = benchFolder({
  'sine.csv': smallCapture({ noiseRatio: 0, bits: null }),
  'behind-probe.csv': smallCapture({ probeRatio: 10 }),
  'modified.csv': smallCapture({ shape: 'modified', dutyRatio: 0.5 }),
  'direct-and-sine.csv': smallCapture({ rmsV: 100, offsetV: 30, noiseRatio: 0, bits: null }),
});

async function metered(file: string, ...words: string[]): Promise<MeasureResult> {
  const [result] = measuredResults(await runCommand(['measure', '--json', file, ...words], folder));
  if (result === undefined) throw new Error('no result');
  return result;
}

test('near a round ratio it proposes --scale and changes nothing', async () => {
  const { meter, voltage } = await metered('behind-probe.csv', '--meter', '119');
  expect(meter).toMatchObject({ readingV: 119, answer: 'scale', factor: 10 });
  expect(meter?.message).toContain('--scale 10');
  // 0.5 % noise and 8 bits on 1433 samples: far below 0.1 %.
  expect(Math.abs((voltage?.rmsV.value ?? 0) - 12)).toBeLessThan(0.02);
});

test('at what an average-responding meter shows it doubts the meter and changes nothing', async () => {
  // Half duty: mean |v| = √½ · RMS, times π / (2√2): 0.7854 of the RMS.
  const { meter, voltage } = await metered('modified.csv', '--meter', '94.2');
  expect(meter?.answer).toBe('average');
  expect(meter?.message).toContain('not true-RMS');
  // Edges under a sample wide: 0.3 % of 120 V.
  expect(Math.abs((voltage?.rmsV.value ?? 0) - 120)).toBeLessThan(0.36);
});

test('elsewhere it calibrates the gain, prints the factor, and the doubt shrinks', async () => {
  const { meter, voltage } = await metered('sine.csv', '--meter', '118');
  expect(meter?.answer).toBe('calibrated');
  // 118 / 120; the method is good to 0.01 %.
  expect(Math.abs((meter?.factor ?? 0) - 118 / 120)).toBeLessThan(1e-4);
  expect(Math.abs((voltage?.rmsV.value ?? 0) - 118)).toBeLessThan(1e-6);
  // Gain 3 % and probe 2 % give way to 1 % of the meter: 2 · 118 · 1 % / √3 = 1.36 V, and some offset.
  expect(voltage?.rmsV.value === null ? null : voltage?.rmsV.uncertainty).toBeLessThan(2);
});

test('a handheld meter is held against the RMS without DC, one with --meter-dc against all of it', async () => {
  const handheld = await metered('direct-and-sine.csv', '--meter', '99');
  expect(Math.abs((handheld.meter?.factor ?? 0) - 0.99)).toBeLessThan(1e-4);
  const direct = await metered('direct-and-sine.csv', '--meter', '104', '--meter-dc');
  // √(100² + 30²) = 104.403 V.
  expect(Math.abs((direct.meter?.factor ?? 0) - 104 / Math.hypot(100, 30))).toBeLessThan(1e-4);
});

test.each([
  ['a folder of several', ['.']],
  ['all channels', ['sine.csv', '--voltage', 'all']],
])('one reading for %s is refused', async (_, words) => {
  const { code, stdout, stderr } = await runCommand(['measure', '--meter', '120', ...words], folder);
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toContain('--meter');
});
