import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { benchFolder } from '../../cli/benchFolder.ts';
import { runCommand } from '../../cli/runCommand.ts';
import { smallCapture } from '../../cli/smallCapture.ts';
import { openBrowser } from '../openBrowser.ts';
import { openPage, save, settled } from './openPage.ts';

const large = smallCapture({ sampleRateHz: 1e6, cycles: 58, bits: 12 });
const folder = benchFolder({ 'large.csv': large, 'small.csv': smallCapture() });
const path = (name: string): string => join(folder, name);
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});

test('a capture of 20 MB gives what the command line gives, and tells how far it is read', async () => {
  expect(large.length).toBeGreaterThan(20e6);
  const { stdout } = await runCommand(['measure', 'large.csv', '--json', '--quiet'], folder);
  const { page, told } = await openPage(browser);
  await page.evaluate(() => {
    const shares: number[] = [];
    Object.assign(window, { shares });
    new MutationObserver(() => {
      const bar = document.querySelector<HTMLProgressElement>('#capture-table progress');
      if (bar !== null) shares.push(bar.value);
    }).observe(document.getElementById('capture-table')!, { childList: true, subtree: true });
  });
  await page.setInputFiles('#files', path('large.csv'));
  await settled(page, 1);
  expect((await save(page, 'json')).text).toBe(stdout);
  const shares = await page.evaluate(() => (window as unknown as { shares: number[] }).shares);
  expect(new Set(shares).size).toBeGreaterThan(5);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  expect(Math.max(...shares)).toBeLessThanOrEqual(100);
  expect(told).toEqual([]);
  await page.context().close();
});

test('its reading can be cancelled in the middle; the others go on', async () => {
  const { page, told } = await openPage(browser);
  await page.setInputFiles('#files', [path('large.csv'), path('small.csv')]);
  const bar = page.getByRole('progressbar');
  await bar.waitFor();
  expect(await page.getByRole('status').textContent()).toMatch(/^Measuring, 2 to go/);
  await page.getByRole('button', { name: 'Cancel large.csv' }).click();
  await settled(page, 1);
  expect(await page.textContent('#capture-table tbody th')).toBe('small.csv');
  expect(await page.textContent('#answer-heading')).toMatch(/sine/);
  expect(await page.getByRole('status').textContent()).toBe('Measured.');
  expect(told).toEqual([]);
  await page.context().close();
});

test('while it is read, its answer can be told what is known of it, and the page is heard', async () => {
  const { page, told } = await openPage(browser);
  await page.setInputFiles('#files', path('large.csv'));
  await page.getByRole('progressbar').waitFor();
  await page.fill('#field-label', 'Inverter A');
  await page.fill('#field-scale', '2');
  await settled(page, 1);
  const { text } = await save(page, 'json');
  expect(JSON.parse(text).results[0]).toMatchObject({
    label: 'Inverter A',
    capture: { channels: [{ scale: 2 }] },
  });
  expect(told).toEqual([]);
  await page.context().close();
});
