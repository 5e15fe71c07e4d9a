import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const plan = (file: string): string =>
  `units:\n  - name: A\n    captures:\n      - { file: ${file}, load: 300 W }\n`;
const folder = benchFolder({
  'good.csv': smallCapture(),
  'zero.yaml': plan('/dev/zero'),
  'pipe.yaml': plan('pipe.csv'),
  'missing.yaml': plan('missing.csv'),
  'good.yaml': plan('good.csv'),
  'earlier.yaml': `earlier: [/dev/zero]\n${plan('good.csv')}`,
  'instrument.yaml': `instrument: pipe.csv\n${plan('good.csv')}`,
});
execFileSync('mkfifo', [join(folder, 'pipe.csv')]);
const run = (...words: string[]) => runCommand(words, folder);

describe('a device or a pipe is refused at once, in a line', () => {
  test.each([
    [['measure', '/dev/zero'], '/dev/zero: This is a device'],
    [['measure', 'pipe.csv'], 'pipe.csv: This is a pipe'],
    [['bench', '/dev/zero'], '/dev/zero: This is a device'],
    [['bench', 'pipe.csv'], 'pipe.csv: This is a pipe'],
    [['bench', 'zero.yaml', '--out', 'z'], '/dev/zero: This is a device'],
    [['bench', 'pipe.yaml', '--out', 'z'], 'pipe.csv: This is a pipe'],
    [['bench', 'earlier.yaml', '--out', 'e'], '/dev/zero: This is a device'],
    [['bench', 'instrument.yaml', '--out', 'i'], 'pipe.csv: This is a pipe'],
    [['recheck', '/dev/zero'], '/dev/zero: This is a device'],
    [['recheck', 'pipe.csv'], 'pipe.csv: This is a pipe'],
    [['compare', 'pipe.csv', 'good.csv'], 'pipe.csv: This is a pipe'],
    [['page', '--out', '/dev/zero', '--force'], '/dev/zero is a device'],
  ])('%j', async (words, line) => {
    const { code, stderr } = await run(...words);
    expect(code).toBe(2);
    expect(stderr).toContain(line);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(statSync('/dev/zero').isCharacterDevice()).toBe(true);
  });

  test('in the place of an output, and the rest is written', async () => {
    mkdirSync(join(folder, 'taken'));
    symlinkSync('/dev/zero', join(folder, 'taken', 'index.html'));
    const { code, stderr } = await run('report', 'good.csv', '--out', 'taken');
    expect(code).toBe(2);
    expect(stderr).toContain('index.html is a device');
    expect(existsSync(join(folder, 'taken', 'good.svg'))).toBe(true);
  });
});

test('a run of nothing but errors leaves no bench.json that would stand in the next one’s way', async () => {
  const failed = await run('bench', 'missing.yaml', '--out', 'next');
  expect(failed.code).toBe(2);
  expect(existsSync(join(folder, 'next', 'bench.json'))).toBe(false);
  const good = await run('bench', 'good.yaml', '--out', 'next');
  expect({ code: good.code, stderr: good.stderr }).toEqual({ code: 0, stderr: '' });
});

test('an output is replaced as long as it is as it was written, and never once it was changed', async () => {
  const report = (...more: string[]) =>
    run('report', 'good.csv', '--out', 'own', '--html', '--markdown', '--csv', '--png', ...more);
  expect((await report()).code).toBe(0);
  expect(await report()).toMatchObject({ code: 0, stderr: '' });
  for (const name of ['good.svg', 'good.html', 'good.md', 'good.png', 'figures.csv', 'index.html']) {
    const path = join(folder, 'own', name);
    const bytes = readFileSync(path);
    const changed = Buffer.from(bytes);
    changed[changed.length >> 1]! ^= 1;
    writeFileSync(path, changed);
    const { code, stderr } = await report();
    expect({ name, code }).toEqual({ name, code: 2 });
    expect(stderr).toContain(`${name} is there already`);
    expect(readFileSync(path)).toEqual(changed);
    writeFileSync(path, bytes);
  }
  writeFileSync(join(folder, 'own', 'figures.csv'), 'my own figures,measured with sineassay\n');
  expect((await report()).code).toBe(2);
  expect(readFileSync(join(folder, 'own', 'figures.csv'), 'utf8')).toContain('my own figures');
});

test('a bench.json is known by its digest too', async () => {
  const path = join(folder, 'json', 'bench.json');
  expect((await run('bench', 'good.yaml', '--out', 'json')).code).toBe(0);
  expect(await run('bench', 'good.yaml', '--out', 'json')).toMatchObject({ code: 0, stderr: '' });
  writeFileSync(path, readFileSync(path, 'utf8').replace('"label": "A"', '"label": "B"'));
  const { code, stderr } = await run('bench', 'good.yaml', '--out', 'json');
  expect(code).toBe(2);
  expect(stderr).toContain('bench.json is there already');
});
