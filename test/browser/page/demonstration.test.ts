import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { benchFolder } from '../../cli/benchFolder.ts';
import { runCommand } from '../../cli/runCommand.ts';
import { captureFiles } from '../everySheet.ts';
import { openBrowser } from '../openBrowser.ts';
import { dropPaths, openPage, save, saved, settled } from './openPage.ts';

const captures = resolve('captures');
const folder = benchFolder({ 'out/.keep': '' });
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
  const { stderr } = await runCommand(
    ['report', ...captureFiles, '--out', join(folder, 'out'), '--no-gallery', '--quiet'],
    captures,
  );
  expect(stderr).toBe('');
});

const sheetOf = (name: string): string => readFileSync(join(folder, 'out', name), 'utf8');

describe('dropped on the page, a demonstration capture gives what the command line gives, byte for byte', () => {
  test.each(captureFiles)('%s', async (file) => {
    const { page, told } = await openPage(browser);
    await dropPaths(page, [join(captures, file)]);
    await settled(page, 1);
    expect(await page.textContent('#failure')).toBe('');
    expect(await page.isVisible('#invented')).toBe(true);
    const { stdout } = await runCommand(['measure', file, '--json'], captures);
    const json = await save(page, 'json');
    expect(json.name).toBe(file.replace('.csv', '.json'));
    expect(json.text).toBe(stdout);
    const sheets: { name: string; text: string }[] = [];
    page.on('download', async (download) => {
      const name = download.suggestedFilename();
      sheets.push({ name, text: readFileSync(await download.path(), 'utf8') });
    });
    await page.click('[data-save="svg"]');
    const stem = file.replace('.csv', '');
    const names = [`${stem}.svg`];
    if (/step|transfer/.test(file)) names.push(`${stem}-changes.svg`);
    await expect.poll(() => sheets.map(({ name }) => name).sort()).toEqual(names.sort());
    for (const { name, text } of sheets) expect(text === sheetOf(name), name).toBe(true);
    expect(await page.textContent('#status')).toMatch(new RegExp(`^Saved ${stem}\\.svg`));
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('all of them as a folder give one document, the same as of the command line', async () => {
  const { page, told } = await openPage(browser);
  // README and plan lie in the folder too, and are no captures.
  await dropPaths(page, [captures]);
  await settled(page, captureFiles.length);
  const { stdout } = await runCommand(
    ['measure', ...captureFiles.map((file) => `captures/${file}`), '--json'],
    resolve('.'),
  );
  const all = await saved(page, () => page.click('#save-all-json'));
  expect(all.text).toBe(stdout);
  expect(told).toEqual([]);
  await page.context().close();
});
