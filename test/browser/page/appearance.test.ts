import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { axeViolations } from '../axeViolations.ts';
import { openBrowser } from '../openBrowser.ts';
import { drop, openPage, settled } from './openPage.ts';

const captures = resolve('captures');
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});

/** Elements that reach beyond the window and are not within one that scrolls. */
const wide = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const { clientWidth, scrollWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    return [...document.querySelectorAll('main *')]
      .filter((element) => element.getBoundingClientRect().right > clientWidth + 1)
      .map((element) => element.outerHTML.slice(0, 100));
  });

/** The states of the page, each from the one before. */
const states: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
  ['the first visit', async () => {}],
  [
    'one capture',
    async (page) => {
      await page.setInputFiles('#files', join(captures, 'a-red-step-on.csv'));
      await settled(page, 1);
      await page.fill('#field-claims', 'pure sine\n120 V ±5 %\nTHD < 3 %');
      await page.keyboard.press('Tab');
      await settled(page, 1);
    },
  ],
  [
    'all that is folded opened, a field that is wrong, two marks',
    async (page) => {
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      await page.fill('#field-scale', 'much');
      await page.fill('#mark-a', '0');
      await page.fill('#mark-b', '10');
      await page.keyboard.press('Tab');
    },
  ],
  [
    'several captures, one that failed',
    async (page) => {
      await page.setInputFiles('#files', [
        join(captures, 'b-blue-300w.csv'),
        join(captures, 'a-red-450w-current.csv'),
      ]);
      await drop(page, [{ name: 'diary.csv', content: 'Dear diary,\nit hummed all evening.\n'.repeat(30) }]);
      await settled(page, 4);
    },
  ],
  ['the failed one looked at', (page) => page.click('text=diary.csv')],
];

// What axe finds depends on inks and order, hardly on the width: it looks at both inks, and at a phone.
test.each([
  [1440, 'light', 'axe finds nothing'],
  [1440, 'dark', 'axe finds nothing'],
  [768, 'dark', ''],
  [390, 'light', 'axe finds nothing'],
  [320, 'dark', ''],
] as const)(
  'at %i px, %s: nothing is wider than the window in any state %s',
  async (width, scheme, looksAt) => {
    const { page, told } = await openPage(browser, { viewport: { width, height: 900 }, colorScheme: scheme });
    expect(await page.evaluate(() => document.fonts.check("16px 'Source Sans 3'"))).toBe(true);
    const found: Record<string, unknown> = {};
    for (const [state, reach] of states) {
      await reach(page);
      const faults = { axe: looksAt === '' ? [] : await axeViolations(page), wide: await wide(page) };
      if (faults.axe.length + faults.wide.length > 0) found[state] = faults;
    }
    expect(found).toEqual({});
    expect(told).toEqual([]);
    await page.context().close();
  },
);

test('letters twice as large in a window of 720 px, as at 200 %, need no scrolling sideways', async () => {
  const { page } = await openPage(browser, { viewport: { width: 720, height: 900 }, deviceScaleFactor: 2 });
  const found: Record<string, unknown> = {};
  for (const [state, reach] of states) {
    await reach(page);
    for (const size of ['100%', '200%']) {
      await page.evaluate((letters) => {
        document.documentElement.style.fontSize = letters;
      }, size);
      const faults = await wide(page);
      if (faults.length > 0) found[`${state}, ${size}`] = faults;
    }
  }
  expect(found).toEqual({});
  await page.context().close();
});

test('nothing moves by itself', async () => {
  const { page } = await openPage(browser, { reducedMotion: 'reduce' });
  for (const [, reach] of states) {
    await reach(page);
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
  }
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).scrollBehavior)).toBe('auto');
  await page.context().close();
});

test('dark paper is dark, light paper light, and both follow the system while the page is open', async () => {
  const { page } = await openPage(browser);
  const brightness = (): Promise<number> =>
    page.evaluate(() => {
      const paper = getComputedStyle(document.documentElement).backgroundColor;
      const body = getComputedStyle(document.body).backgroundColor;
      const [r, g, b] = (/\d+/.test(body) && !/, 0\)$/.test(body) ? body : paper)
        .match(/[\d.]+/g)!
        .map(Number);
      return (r! + g! + b!) / 3;
    });
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await brightness()).toBeGreaterThan(200);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await brightness()).toBeLessThan(60);
  await page.context().close();
});
