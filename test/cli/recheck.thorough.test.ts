import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
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
  const plan = (name: string, ...files: string[]): string =>
    `  - name: ${name}\n    captures:\n${files.map((file) => `      - file: evening/${file}\n        load: 100 W\n`).join('')}`;
  writeFileSync(
    join(folder, 'plan.yaml'),
    `earlier: [bench/bench.json]\nunits:\n${plan('red', 'idle.csv')}${plan('blue', 'kettle.csv')}`,
  );
  await runCommand(['bench', 'plan.yaml', '--out', 'two'], folder);
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
  expect(part.stdout.replaceAll(/\s+/g, ' ')).toMatch(/missing: (evening\/)?heater\.csv/);
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

test('a sheet of several units says of each capture whether it was measured again, earlier or missing', async () => {
  const whole = await recheck('two/comparison.svg', 'evening');
  expect({ code: whole.code, stderr: whole.stderr }).toEqual({ code: 0, stderr: '' });
  const said = whole.stdout.replaceAll(/\s+/g, ' ');
  expect(said).toMatch(/- red, measured again: (evening\/)?idle\.csv\./);
  expect(said).toMatch(/- blue, measured again: (evening\/)?kettle\.csv\./);
  expect(said).toMatch(/- unit, earlier: (evening\/)?idle\.csv, (evening\/)?heater\.csv\./);
  expect(said).toContain('what could be measured again agrees');
  expect(said).not.toContain('every value');

  const part = await recheck('two/comparison.svg', 'evening/idle.csv', '--json');
  expect(part.code).toBe(1);
  const { same, carried, differences } = JSON.parse(part.stdout);
  expect(same).toBe(false);
  expect(carried.map(({ state }: { state: string }) => state)).toEqual([
    'measured again',
    'missing',
    'earlier',
    'earlier',
  ]);
  expect(differences).toEqual([expect.objectContaining({ code: 'capture.missing' })]);
  expect(differences[0].message).toMatch(/^blue: .* missing: .*kettle\.csv\.$/);
});

test('a sheet that says another version is never the same, and is held against its capture all the same', async () => {
  const text = readFileSync(join(folder, 'sheets/heater.svg'), 'utf8');
  writeFileSync(join(folder, 'other.svg'), text.replace(/("program":")[^"]*/, '$199.0.0'));
  const { code, stdout } = await recheck('other.svg', 'evening/heater.csv', '--json');
  expect(code).toBe(1);
  const { same, captures, differences } = JSON.parse(stdout);
  expect({ same, captures }).toEqual({ same: false, captures: ['evening/heater.csv'] });
  const codes = differences.map((difference: { code: string }) => difference.code);
  expect(codes).toContain('program.other');
  expect(codes).not.toContain('figure.differs');
});

test('bytes that are no text make another file of it', async () => {
  const bytes = readFileSync(join(folder, 'sheets/heater.svg'));
  writeFileSync(join(folder, 'bytes.svg'), Buffer.concat([bytes, Buffer.of(0xff)]));
  const { code, stdout } = await recheck('bytes.svg');
  expect(code).toBe(1);
  expect(stdout).toContain('bytes that are no text');
});

test('a hostile sheet never ends in a defect, nor keeps the gallery from being made', async () => {
  const hostile = {
    deep: `<metadata id="evidence">${'['.repeat(200_000)}</metadata>`,
    tags: '<metadata id="evidence" '.repeat(40_000),
    nothing: '<metadata id="evidence">{"schema":"sineassay/sheet@1"}</metadata>',
  };
  for (const [name, text] of Object.entries(hostile)) {
    writeFileSync(
      join(folder, 'sheets', `${name}.svg`),
      `<svg xmlns="http://www.w3.org/2000/svg">${text}</svg>\n`,
    );
    expect((await recheck(`sheets/${name}.svg`)).code).toBeLessThanOrEqual(2);
  }
  copyFileSync(join(folder, 'edited.svg'), join(folder, 'sheets', 'edited.svg'));
  const { code, stderr } = await runCommand(['report', 'evening/idle.csv', '--out', 'sheets'], folder);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  const page = readFileSync(join(folder, 'sheets/index.html'), 'utf8');
  expect(page).toContain('data nested deeper than any sheet’s');
  expect(page).toContain('edited.svg: <span class="soft">it was changed after it was written');
});
