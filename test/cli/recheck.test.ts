import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { sineChannels, smallCapture } from './smallCapture.ts';

const clamp = sineChannels([{ name: 'Clamp', unit: 'A', rms: 2 }]);
const folder = benchFolder({
  'evening/heater.csv': smallCapture(),
  'evening/kettle.csv': smallCapture({ shape: 'modified' }),
  'evening/idle.csv': smallCapture({ noiseRatio: 0.004 }),
  'voltage.csv': sineChannels([{ name: 'CH1', unit: 'V', rms: 120 }]),
  'clamp.csv': clamp,
  'plain.svg': '<svg xmlns="http://www.w3.org/2000/svg"></svg>\n',
});
const claims = ['--claim', 'pure sine', '--claim', '120 V ±5 %', '--scale', '1.01', '--orders', '40'];

beforeAll(async () => {
  await runCommand(['report', 'evening', '--out', 'sheets', ...claims], folder);
  await runCommand(['report', 'voltage.csv', '--out', 'sheets', '--current', 'clamp.csv'], folder);
  const bench = ['bench', '0W=evening/idle.csv', '300W=evening/heater.csv', '--claim', '120 V ±5 %'];
  await runCommand([...bench, '--out', 'bench'], folder);
});

const recheck = (...words: string[]) => runCommand(['recheck', ...words], folder);

test('a sheet and its capture are the same, however it was measured', async () => {
  const { code, stdout, stderr } = await recheck('sheets/heater.svg', 'evening/heater.csv');
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(stdout).toMatch(/^sheets\/heater\.svg\n {2}The same: [\s\S]*evening\/heater\.csv/);
});

test('without a capture it is checked against itself, and that is said', async () => {
  const { code, stdout } = await recheck('sheets/heater.svg');
  expect(code).toBe(0);
  expect(stdout).toContain('Only its capture tells');
});

test('of a folder the capture is found by its digest', async () => {
  const { code, stdout } = await recheck('sheets/kettle.svg', 'evening');
  expect(code).toBe(0);
  expect(stdout).toContain('evening/kettle.csv');
});

test('a wrong capture is found, with what it gives otherwise', async () => {
  const { code, stdout } = await recheck('sheets/heater.svg', 'evening/kettle.csv', '--json');
  expect(code).toBe(1);
  const { same, differences } = JSON.parse(stdout);
  expect(same).toBe(false);
  const messages = differences.map(({ message }: { message: string }) => message);
  expect(messages[0]).toContain('another capture');
  expect(messages[1]).toBe(
    'waveform.kind: the sheet carries “pure sine”, the capture gives “modified sine”.',
  );
  expect(messages.some((message: string) => message.startsWith('voltage.thdPercent.value: '))).toBe(true);
});

test('a number edited in the data is found against itself, and named against the capture', async () => {
  const text = readFileSync(join(folder, 'sheets/heater.svg'), 'utf8');
  writeFileSync(join(folder, 'edited.svg'), text.replace(/("thdPercent":\{"value":)[\d.]+/, '$11.5'));
  const { code, stdout } = await recheck('edited.svg', 'evening/heater.csv', '--json');
  expect(code).toBe(1);
  const messages = JSON.parse(stdout).differences.map(({ message }: { message: string }) => message);
  expect(messages).toContain('The result inside it was changed after it was written.');
  expect(messages.some((m: string) => m.startsWith('voltage.thdPercent.value: the sheet carries 1.5'))).toBe(
    true,
  );
});

test('data that were cut are a difference; a file without any can’t be read', async () => {
  const text = readFileSync(join(folder, 'sheets/heater.svg'), 'utf8');
  writeFileSync(join(folder, 'cut.svg'), text.replace('"schema":', '"schema"'));
  expect((await recheck('cut.svg')).code).toBe(1);
  const plain = await recheck('plain.svg');
  expect(plain.code).toBe(2);
  expect(plain.stderr).toMatch(/^plain\.svg: The file carries no result; [^\n]+\n$/);
  expect((await recheck('nowhere.svg')).code).toBe(2);
  expect((await recheck('sheets/heater.svg', 'nowhere.csv')).code).toBe(2);
});

test('a sweep is measured again from all of its captures', async () => {
  const whole = await recheck('bench/sweep-unit.svg', 'evening');
  expect(whole.code).toBe(0);
  expect(whole.stdout).toContain('2 captures of this sheet');
  const part = await recheck('bench/sweep-unit.svg', 'evening/idle.csv');
  expect(part.code).toBe(1);
  expect(part.stdout.replaceAll(/\s+/g, ' ')).toContain('missing: evening/heater.csv');
  const none = await recheck('bench/sweep-unit.svg', 'evening/kettle.csv');
  expect(none.code).toBe(1);
});

test('a file that only the sheet names is never opened: the current’s is asked for', async () => {
  const without = await recheck('sheets/voltage.svg', 'voltage.csv');
  expect(without.code).toBe(2);
  expect(without.stderr).toContain('name that with --current');
  const given = await recheck('sheets/voltage.svg', 'voltage.csv', '--current', 'clamp.csv');
  expect({ code: given.code, stderr: given.stderr }).toEqual({ code: 0, stderr: '' });
});
