import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { openBrowser } from './openBrowser.ts';

test('every demonstration sheet opens as an image of 1600 by 900, with its title', async () => {
  const browser = await openBrowser();
  const page = await browser.newPage();
  const sheets = readdirSync('reports').filter((name) => name.endsWith('.svg'));
  expect(sheets.length).toBeGreaterThan(10);
  for (const sheet of sheets) {
    await page.goto(pathToFileURL(resolve('reports', sheet)).href);
    const { width, height, title } = await page.evaluate(() => {
      const { width, height } = document.documentElement.getBoundingClientRect();
      return { width, height, title: document.querySelector('title')?.textContent ?? '' };
    });
    expect({ sheet, width, height }).toEqual({ sheet, width: 1600, height: 900 });
    expect(title).toMatch(/\?/);
  }
});
