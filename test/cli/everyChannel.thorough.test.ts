import { expect, test } from 'vitest';
import type { MeasureDocument, MeasureResult } from '../../src/assay/measureDocument.ts';
import { writeCapture } from '../../src/synth/writeCapture.ts';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';

const rate = 20_000;
const count = 2000;
const channel = (name: string, unit: string, at: (t: number) => number) => ({
  ...{ name, unit },
  samples: Float64Array.from({ length: count }, (_, n) => at(n / rate)),
});
const sine = (rms: number, hertz: number) => (t: number) =>
  Math.SQRT2 * rms * Math.sin(2 * Math.PI * hertz * t);
const folder = benchFolder({
  // The second channel holds one cycle in all the record: under 1.3, which is refused.
  'scope.csv': writeCapture('comma', {
    channels: [
      channel('CH1', 'V', sine(120, 60)),
      channel('CH2', 'V', sine(5, rate / count)),
      channel('CH3', 'V', sine(118, 60)),
    ],
    ...{ startS: 0, intervalS: 1 / rate },
  }),
  'volts.csv': writeCapture('comma', {
    channels: [
      channel('V1', 'V', sine(120, 60)),
      channel('V2', 'V', sine(1.5, 60)),
      channel('V3', 'V', sine(118, 60)),
    ],
    ...{ startS: 0, intervalS: 1 / rate },
  }),
  'clamps.csv': writeCapture('comma', {
    channels: [
      channel('CH1', 'V', sine(120, 60)),
      channel('CH2', 'A', sine(2, 60)),
      channel('CH3', 'A', sine(3, 60)),
    ],
    ...{ startS: 0, intervalS: 1 / rate },
  }),
});

test('--voltage all gives a result for each channel that can be measured, an error by name for the rest, and exit code 2', async () => {
  const { code, stdout, stderr } = await runCommand(
    ['measure', '--json', '--voltage', 'all', 'scope.csv'],
    folder,
  );
  expect(code).toBe(2);
  expect(stderr).toMatch(/^scope\.csv: CH2: [^\n]+\n$/);
  const { results } = JSON.parse(stdout) as MeasureDocument;
  expect(
    results.map((one) => ('error' in one ? one.error.message.slice(0, 4) : one.voltage?.channel)),
  ).toEqual(['CH1', 'CH3', 'CH2:']);
  const { notices } = results[0] as MeasureResult;
  expect(notices.find(({ code: name }) => name === 'channels.unmeasured')?.message).toContain('CH2: ');
});

test('where every channel can be measured the exit code is 0', async () => {
  const { code, stderr } = await runCommand(['measure', '--voltage', 'all', 'clamps.csv'], folder);
  expect([code, stderr]).toEqual([0, '']);
});

test('a channel named as the current of all is the one error, said once; the others are measured with it', async () => {
  const words = ['measure', '--json', '--voltage', 'all', '--current', 'V2', 'volts.csv'];
  const { code, stdout, stderr } = await runCommand(words, folder);
  expect(code).toBe(2);
  expect(stderr).toMatch(
    /^volts\.csv: V2 is the voltage: it can't be the current too; expected one of V1, V3, [^\n]+\n$/,
  );
  const { results } = JSON.parse(stdout) as MeasureDocument;
  expect(
    results.map((one) => ('error' in one ? one.error.code : [one.voltage?.channel, one.power !== undefined])),
  ).toEqual([['V1', true], ['V3', true], 'channel.same']);
});

test('a second current is named', async () => {
  const { stdout } = await runCommand(['measure', '--json', 'clamps.csv'], folder);
  const [result] = (JSON.parse(stdout) as MeasureDocument).results as MeasureResult[];
  const message = result?.notices.find(({ code }) => code === 'channels.currents')?.message;
  expect(message).toContain('CH2 is taken for the load’s current');
  expect(message).toContain('not looked at: CH3 (--current NAME)');
});
