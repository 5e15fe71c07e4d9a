import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const folder = benchFolder({
  'sine.csv': smallCapture(),
  'again.csv': smallCapture({ noiseRatio: 0.0051 }),
  'modified.csv': smallCapture({ shape: 'modified' }),
  'broken.csv': 'no numbers\n',
  'two.json': '{"schema":"sineassay/measure@1","results":[]}',
});
const compare = (...words: string[]) => runCommand(['compare', ...words], folder);

beforeAll(async () => {
  await runCommand(['report', 'sine.csv', 'modified.csv', '--out', 'sheets'], folder);
  const { stdout } = await runCommand(['measure', 'sine.csv', '--json'], folder);
  const { writeFileSync } = await import('node:fs');
  writeFileSync(join(folder, 'sine.json'), stdout);
});

test('two captures: what differs, how much, and exit code 0', async () => {
  const { code, stdout, stderr } = await compare('sine.csv', 'modified.csv');
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(stdout).toMatch(/^A sine\.csv\nB modified\.csv\n {2}A is a pure sine, B a modified sine; /);
  expect(stdout).toMatch(/THD .*differs\n/);
  expect(stdout.split('\n').length).toBeLessThanOrEqual(16);
});

test('with --same a difference is exit code 1, and likeness 0', async () => {
  expect((await compare('sine.csv', 'modified.csv', '--same')).code).toBe(1);
  expect((await compare('sine.csv', 'sine.csv', '--same')).code).toBe(0);
});

test('sheet, result and capture can be mixed', async () => {
  for (const other of ['sheets/sine.svg', 'sine.json', 'sine.csv']) {
    const { code, stdout } = await compare(other, 'sheets/modified.svg', '--json');
    expect(code).toBe(0);
    const { schema, a, b, differences, kind } = JSON.parse(stdout);
    expect(schema).toBe('sineassay/compare@1');
    expect([a.file, b.file]).toEqual(['sine.csv', 'modified.csv']);
    expect(kind).toEqual({ a: 'pure sine', b: 'modified sine', significant: true });
    const thd = differences.find(({ key }: { key: string }) => key === 'voltage.thdPercent');
    expect(thd.significant).toBe(true);
    expect(Math.abs(thd.difference.value - (thd.b.value - thd.a.value))).toBeLessThan(1);
  }
});

test('one instrument makes volts surer; of sheets it says that it can’t', async () => {
  const volts = async (...words: string[]): Promise<number> => {
    const { stdout } = await compare('sine.csv', 'again.csv', '--json', ...words);
    return JSON.parse(stdout).differences[0].difference.uncertainty;
  };
  expect(await volts('--same-instrument')).toBeLessThan(0.1 * (await volts()));
  const { stdout } = await compare('sheets/sine.svg', 'sheets/modified.svg', '--same-instrument', '--json');
  const { sameInstrument, notices } = JSON.parse(stdout);
  expect(sameInstrument).toBe(false);
  expect(notices.map(({ code }: { code: string }) => code)).toContain('compare.budgets');
});

test('with --out a sheet of both waves is written, which can be rechecked', async () => {
  const { code, stdout } = await compare('sine.csv', 'modified.csv', '--out', 'both', '--png');
  expect(code).toBe(0);
  expect(stdout).toContain('Sheet: both/compare-sine-modified.svg');
  expect(readFileSync(join(folder, 'both/compare-sine-modified.png')).toString('latin1', 1, 4)).toBe('PNG');
  const whole = await runCommand(['recheck', 'both/compare-sine-modified.svg', '.'], folder);
  expect(whole.stdout).toContain('The same');
  const edited = readFileSync(join(folder, 'both/compare-sine-modified.svg'), 'utf8');
  const { writeFileSync } = await import('node:fs');
  writeFileSync(join(folder, 'edited.svg'), edited.replace('"significant":true', '"significant":false'));
  expect((await runCommand(['recheck', 'edited.svg'], folder)).code).toBe(1);
});

test('what can’t be compared is one line and exit code 2', async () => {
  for (const other of ['broken.csv', 'nowhere.csv', 'two.json']) {
    const { code, stdout, stderr } = await compare('sine.csv', other);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr.split('\n')).toHaveLength(2);
    expect(stderr.startsWith(`${other}: `)).toBe(true);
  }
  const { code } = await compare('sine.json', 'modified.csv', '--out', 'none');
  expect(code).toBe(2);
  expect(existsSync(join(folder, 'none'))).toBe(false);
});
