import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ownBenchOutput, ownOutput, ownTable } from '../../../src/cli/writing/ownOutput.ts';
import { writeOutput } from '../../../src/cli/writing/writeOutput.ts';
import { writeWhole } from '../../../src/cli/writing/writeWhole.ts';
import { benchFolder } from '../benchFolder.ts';

const [a, b] = ['a'.repeat(64), 'b'.repeat(64)] as const;
const folder = benchFolder({ 'in-the-way': null });
const path = join(folder, 'sheet.svg');
const isOwn = ownOutput([a]);

test('a free name is taken, an earlier result of the same capture replaced', async () => {
  await writeOutput(path, `sineassay ${a} 1`, { isOwn, force: false });
  await writeOutput(path, `sineassay ${a} 2`, { isOwn, force: false });
  expect(readFileSync(path, 'utf8')).toBe(`sineassay ${a} 2`);
});

test.each([
  ['another capture’s', `sineassay ${b}`],
  ['somebody else’s', `drawing ${a}`],
  ['an empty file', ''],
])('%s is left alone unless told to replace it', async (_, there) => {
  writeFileSync(path, there);
  const write = (force: boolean) => writeOutput(path, 'new', { isOwn, force });
  await expect(write(false)).rejects.toMatchObject({ code: 'file.exists' });
  expect(readFileSync(path, 'utf8')).toBe(there);
  await write(true);
  expect(readFileSync(path, 'utf8')).toBe('new');
});

test('a sheet of two captures is one of either of a bench test, and no table of one', () => {
  const there = Buffer.from(`sineassay ${a} ${b}`);
  expect(ownOutput([a, b])(there)).toBe(true);
  expect(ownBenchOutput([a, 'c'.repeat(64)])(there)).toBe(true);
  expect(ownTable([a])(there)).toBe(false);
  expect(ownTable([a, b])(there)).toBe(true);
});

test('what can’t be written leaves nothing behind', async () => {
  await expect(writeWhole(join(folder, 'in-the-way'), 'x')).rejects.toMatchObject({
    code: 'file.unwritable',
  });
  await expect(writeWhole(join(folder, 'none', 'x'), 'x')).rejects.toMatchObject({ code: 'file.unwritable' });
  expect(readdirSync(folder).sort()).toEqual(['in-the-way', 'sheet.svg']);
});
