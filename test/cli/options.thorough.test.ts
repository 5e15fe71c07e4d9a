import { expect, test } from 'vitest';
import type { MeasureResult } from '../../src/assay/measureDocument.ts';
import type { Figure } from '../../src/base/figure.ts';
import { benchFolder } from './benchFolder.ts';
import { measuredResults } from './measuredResults.ts';
import { runCommand } from './runCommand.ts';
import { sineChannels, smallCapture } from './smallCapture.ts';

const folder = benchFolder({
  'sine.csv': smallCapture({ harmonics: [{ order: 3, ratio: 0.04, phaseRad: 0 }], shape: 'harmonics' }),
  'wrong.yaml': 'gain: 3\n',
  'values.csv': smallCapture({ layout: 'values' }),
  'legs.csv': sineChannels([
    { name: 'CH1', unit: 'V', rms: 120 },
    { name: 'CH2', unit: 'V', rms: -120 },
    { name: 'Clamp', unit: 'A', rms: 3 },
  ]),
});

async function measure(...words: string[]): Promise<readonly MeasureResult[]> {
  return measuredResults(await runCommand(['measure', '--json', ...words], folder));
}

/** Files of `sineChannels` carry no noise: seven digits and the method's 0.01 % leave this much. */
const closeV = 0.02;

function inVolts(figure: Figure | undefined): number {
  if (figure === undefined || figure.value === null) throw new Error('not measured');
  return figure.value;
}

test('untold: the first voltage channel, a nominal inferred, 50 orders, a pure sine to 5 %', async () => {
  const [legs, sine, ...others] = await measure('legs.csv', 'sine.csv');
  expect(others).toEqual([]);
  expect(legs?.voltage?.channel).toBe('CH1');
  expect(legs?.notices.find(({ code }) => code === 'channels.others')?.message).toContain('CH2');
  expect(sine?.nominal).toEqual({ voltageV: 120, frequencyHz: 60, inferred: true });
  expect(sine?.voltage?.harmonics.length).toBe(50);
  expect(sine?.waveform.kind).toBe('pure sine');
});

test('--nominal, --orders, --sine-thd and --sample-rate are taken at their word', async () => {
  const told = ['--nominal', '115V/60Hz', '--orders', '40', '--sine-thd', '3', '--sample-rate', '20000'];
  const [sine, values] = await measure('sine.csv', 'values.csv', ...told);
  expect(sine?.nominal).toEqual({ voltageV: 115, frequencyHz: 60, inferred: false });
  expect(sine?.voltage?.thdOrders).toBe(40);
  expect(sine?.voltage?.harmonics.length).toBe(40);
  // 4 % of the third harmonic: a pure sine to 5 %, not to 3 %.
  expect(sine?.waveform.kind).toBe('distorted sine');
  const { frequencyHz } = values?.voltage ?? {};
  // 0.5 % noise on 1433 samples of 4.3 cycles: the Cramér-Rao bound is 0.0007 Hz, and this lies far above.
  expect(Math.abs((frequencyHz?.value ?? 0) - 60)).toBeLessThan(0.02);
});

test('--scale alone multiplies the measured channel, --scale NAME= that one; --invert turns one over', async () => {
  const words = ['--voltage', 'CH2', '--scale', '2', '--scale', 'CH1=1.5', '--invert', 'CH1'];
  const [result] = await measure('legs.csv', ...words);
  expect(result?.voltage?.channel).toBe('CH2');
  expect(Math.abs(inVolts(result?.voltage?.rmsV) - 240)).toBeLessThan(2 * closeV);
  expect(result?.capture.channels.map(({ scale }) => scale)).toEqual([-1.5, 2, 1]);
});

test('--voltage all gives a result for each voltage channel', async () => {
  const results = await measure('legs.csv', '--voltage', 'all');
  expect(results.map(({ voltage }) => voltage?.channel)).toEqual(['CH1', 'CH2']);
});

test('--voltage A-B measures the difference of two, after the one that is inverted is turned over', async () => {
  const [across] = await measure('legs.csv', '--voltage', 'CH1-CH2');
  expect(Math.abs(inVolts(across?.voltage?.rmsV) - 240)).toBeLessThan(2 * closeV);
  const [nothing] = await measure('legs.csv', '--voltage', 'CH1-CH2', '--invert', 'CH2');
  expect(inVolts(nothing?.voltage?.rmsV)).toBeLessThan(closeV);
});

test('a channel that is not there is refused with those that are', async () => {
  const { code, stderr } = await runCommand(['measure', 'legs.csv', '--voltage', 'CH9'], folder);
  expect(code).toBe(2);
  expect(stderr).toMatch(/^legs\.csv: .*CH9.*CH1, CH2.*\n$/);
});

test('an option that is not understood is refused before anything is measured', async () => {
  const { code, stdout, stderr } = await runCommand(
    ['measure', 'legs.csv', '--claim', 'best in town'],
    folder,
  );
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toMatch(/^error: option '--claim <text>'.*best in town.*\n\(see --help\)\n$/);
});

test('an instrument file that is wrong or missing is one of the wrong words: nothing is measured', async () => {
  const missing = await runCommand(['measure', 'sine.csv', '--instrument', 'scope.yaml'], folder);
  expect(missing).toMatchObject({ code: 2, stdout: '' });
  expect(missing.stderr).toContain("option '--instrument <file>' argument 'scope.yaml' is invalid");
  expect(missing.stderr).toContain('no such file');
  const wrong = await runCommand(['measure', 'sine.csv', '--instrument', 'wrong.yaml'], folder);
  expect(wrong).toMatchObject({ code: 2, stdout: '' });
  expect(wrong.stderr).toContain('"gain" is not known');
});
