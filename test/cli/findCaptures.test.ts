import { execFileSync } from 'node:child_process';
import { symlinkSync } from 'node:fs';
import type * as Files from 'node:fs/promises';
import { join, relative } from 'node:path';
import { expect, test, vi } from 'vitest';
import { findCaptures } from '../../src/cli/findCaptures.ts';
import { readFileCapture } from '../../src/cli/reading/readFileCapture.ts';
import { benchFolder } from './benchFolder.ts';

const folder = benchFolder({
  'evening/2.csv': '',
  'evening/10.CSV': '',
  'evening/notes.md': '',
  'evening/.hidden.csv': '',
  'evening/deep/er/1.txt': '',
  'evening/closed/1.csv': '',
  'elsewhere/3.csv': '',
  'closed/1.csv': '',
  'machine/1.csv': '',
});
const at = (...parts: string[]): string => join(folder, ...parts);
execFileSync('mkfifo', [at('evening', 'pipe.csv')]);
symlinkSync('/dev/zero', at('evening', 'zero.csv'));
symlinkSync('..', at('evening', 'deep', 'up'));
symlinkSync('.', at('evening', 'itself'));
symlinkSync('circle', at('evening', 'circle'));
symlinkSync('/', at('machine', 'all'));
symlinkSync('2.csv', at('evening', 'latest.csv'));
symlinkSync(at('elsewhere'), at('evening', 'other'));
symlinkSync('nowhere.csv', at('evening', 'gone.csv'));

/** Root may read any folder: what the system says to others is said for it. */
vi.mock('node:fs/promises', async (original) => {
  const files = await original<typeof Files>();
  const readdir = (path: string, options: object): unknown =>
    path.endsWith('closed')
      ? Promise.reject(Object.assign(new Error('EACCES'), { code: 'EACCES' }))
      : (files.readdir as (...words: unknown[]) => unknown)(path, options);
  return { ...files, readdir };
});

const found = async (...named: string[]) =>
  (await findCaptures(named.map((name) => at(name)))).map(({ file, error }) =>
    error === undefined ? relative(folder, file) : `${relative(folder, file)}: ${error.code}`,
  );

test('a folder is read as far as regular files go, links in a circle once, a closed folder is said to be one', async () => {
  expect(await found('evening')).toEqual([
    'evening/2.csv',
    'evening/10.CSV',
    'evening/deep/er/1.txt',
    'evening/other/3.csv',
    'evening/closed: folder.unreadable',
  ]);
});

test('a folder that may not be read is no empty one', async () => {
  const [{ error } = { error: undefined }] = await findCaptures([at('closed')]);
  expect(error).toMatchObject({ code: 'folder.unreadable', detail: { received: 'no permission' } });
});

test('a pattern measures a file once, whatever links lead to it', async () => {
  expect(await found('evening/**/*.csv')).toEqual([
    'evening/2.csv',
    'evening/other/3.csv',
    'evening/closed: folder.unreadable',
  ]);
  expect(await found('evening/*.csv')).toContain('evening/2.csv');
});

test('a link that leads back to itself is no missing file', async () => {
  const [{ error } = { error: undefined }] = await findCaptures([at('evening', 'circle')]);
  expect(error).toMatchObject({
    code: 'file.unreadable',
    detail: { received: 'a link that leads back to itself' },
  });
});

test('a link to a folder that holds this one is not followed', async () => {
  expect(await found('machine', 'machine/**/*.csv')).toEqual(['machine/1.csv']);
});

test('a folder that holds more than can be looked through is said to', async () => {
  const errors = (await findCaptures([at('evening')], 3)).flatMap(({ error }) => error?.code ?? []);
  expect(errors).toContain('folder.tooLarge');
});

test('a system’s own folder ends at links to other disks, and its files are refused where they hold more than they say', async () => {
  const began = performance.now();
  const results = await findCaptures(['/proc/self']);
  expect(results.every(({ error }) => error?.code === 'folder.unreadable')).toBe(true);
  // Before, all of the machine's disk was walked through.
  expect(performance.now() - began).toBeLessThan(5000);
  await expect(readFileCapture('/proc/self/smaps', {})).rejects.toMatchObject({
    code: 'file.unreadable',
    message: 'The file holds more than the system says of it.',
  });
});
