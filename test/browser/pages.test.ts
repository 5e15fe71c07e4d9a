import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { typeface } from '../../src/cli/report/typeface.ts';
import { capturePage } from '../../src/publish/html/capturePage.ts';
import { galleryPage } from '../../src/publish/html/galleryPage.ts';
import { benchFolder } from '../cli/benchFolder.ts';
import { runCommand } from '../cli/runCommand.ts';
import { assays } from '../fixtures/assays.ts';
import { hostileTexts, hostileToPages } from '../fixtures/hostileText.ts';
import { press, sheetSaying } from '../fixtures/openedSheets.ts';
import { axeViolations } from './axeViolations.ts';
import { listen } from './listen.ts';
import { openBrowser } from './openBrowser.ts';

const folder = benchFolder({ 'out/.keep': '' });
const pages = ['index', 'a-red-step-on', 'b-blue-300w', 'bench'];
const hostile = new Map<string, string>();
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
  const out = resolve(folder, 'out');
  const formats = ['--html', '--markdown', '--csv', '--out', out];
  const captures = ['a-red-step-on', 'a-red-600w', 'b-blue-300w'].map((name) => `captures/${name}.csv`);
  await runCommand(
    ['report', ...captures, '--load', '300 W', '--claim', '120 V ±5 %', ...formats],
    resolve('.'),
  );
  await runCommand(['bench', 'captures/plan.yaml', ...formats], resolve('.'));
  const withTypeface = { ...press, typeface: await typeface() };
  const sheets = hostileTexts.map((text) => sheetSaying(assays.goodSine!(), text));
  for (const text of hostileToPages)
    hostile.set(`capture ${text}`, capturePage(withTypeface, [sheetSaying(assays.goodSine!(), text)], []));
  hostile.set(
    'gallery',
    galleryPage(withTypeface, {
      ...{ program: '0.0.0', others: [] },
      sheets: sheets.map(({ evidence }, i) => ({
        ...{ name: `${hostileTexts[i]?.replace(/[\\/]/g, '').slice(0, 200)}.svg`, evidence, beside: [] },
      })),
      unread: hostileTexts.map((text) => ({ name: text, reason: text })),
    }),
  );
});

/** A page opened from the file system, with all that it does beyond showing itself. */
async function opened(
  name: string,
  { width = 1440, dark = false, script = true } = {},
): Promise<{ page: Page; told: string[] }> {
  const context = await browser.newContext({
    viewport: { width, height: 900 },
    colorScheme: dark ? 'dark' : 'light',
    javaScriptEnabled: script,
  });
  const page = await context.newPage();
  const told = listenToPage(page);
  await page.goto(pathToFileURL(resolve(folder, 'out', `${name}.html`)).href);
  if (script) await page.evaluate(() => document.fonts.ready);
  return { page, told };
}

/** What a page does beyond showing itself, requests for other files among it. */
function listenToPage(page: Page): string[] {
  const told = listen(page);
  page.on('request', (request) => {
    if (!/^(file|data):/.test(request.url())) told.push(request.url());
  });
  return told;
}

const shown = (page: Page): Promise<(string | undefined)[]> =>
  page
    .locator('.entry:visible')
    .evaluateAll((entries) => entries.map((entry) => (entry as HTMLElement).dataset.file));

describe.each(pages)('%s', (name) => {
  test.each([
    [1440, false],
    [768, true],
    [390, true],
  ])(
    'at %i px, dark %s: axe finds nothing, nothing is wider than the window, in the sheet’s typeface',
    async (width, dark) => {
      const { page, told } = await opened(name, { width, dark });
      expect(told).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await page.evaluate(() => document.fonts.check("16px 'Source Sans 3'"))).toBe(true);
      // Texts don't stand on each other.
      const overlaps = await page.evaluate(() => {
        const boxes = [...document.querySelectorAll('h1,h2,h3,p,th,td,dt,dd,label,caption')]
          .filter((element) => !element.closest('.hidden') && element.textContent?.trim() !== '')
          .map((element) => ({ element, box: element.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0);
        return boxes.flatMap(({ element, box }, i) => {
          const over = boxes
            .slice(i + 1, i + 12)
            .find(
              (other) =>
                !element.contains(other.element) &&
                other.box.left < box.right - 1 &&
                box.left < other.box.right - 1 &&
                other.box.top < box.bottom - 1 &&
                box.top < other.box.bottom - 1,
            );
          return over === undefined ? [] : [`${element.textContent} | ${over.element.textContent}`];
        });
      });
      expect(overlaps).toEqual([]);
      expect(await axeViolations(page)).toEqual([]);
      await page.context().close();
    },
  );
});

describe('the gallery', () => {
  test('is found in by text, kind and outcome, by keyboard alone', async () => {
    const { page } = await opened('index');
    const all = await shown(page);
    const at = all.indexOf('a-red-step-on.svg');
    expect(all[at + 1]).toBe('a-red-step-on-changes.svg');
    await page.keyboard.press('Tab');
    while ((await page.evaluate(() => document.activeElement?.getAttribute('name'))) !== 'text') {
      await page.keyboard.press('Tab');
    }
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineWidth);
    expect(outline).toBe('3px');
    await page.keyboard.type('blue 300');
    expect(await shown(page)).toEqual(['b-blue-300w.svg']);
    expect(await page.textContent('#count')).toBe(`1 of ${all.length} shown`);
    await page.fill('[name=text]', '');
    await page.selectOption('[name=kind]', 'modified sine');
    expect((await shown(page)).filter((file) => /a-red|green/.test(file ?? ''))).toEqual([]);
    await page.selectOption('[name=kind]', '');
    await page.selectOption('[name=outcome]', 'fails');
    expect(await shown(page)).toContain('sweep-blue.svg');
    expect(await shown(page)).not.toContain('sweep-red.svg');
    await page.context().close();
  });

  test('is put in order by a figure, either way', async () => {
    const { page } = await opened('index');
    await page.selectOption('[name=order]', 'thd');
    const captures = (await shown(page)).filter((file) => !/sweep|comparison|changes/.test(file ?? ''));
    expect(captures.at(-1)).toBe('b-blue-300w.svg');
    await page.check('[name=down]');
    const down = (await shown(page)).filter((file) => !/sweep|comparison|changes/.test(file ?? ''));
    expect(down).toEqual(captures.toReversed());
    await page.context().close();
  });

  test('is a plain list without a script, and on paper without its fields', async () => {
    const plain = await opened('index', { script: false });
    expect(await plain.page.locator('.entry:visible').count()).toBeGreaterThan(5);
    expect(await plain.page.locator('#arrange').isVisible()).toBe(false);
    await plain.page.context().close();
    const { page } = await opened('index');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#arrange').isVisible()).toBe(false);
    await page.context().close();
  });

  test('every link leads to a file that is there', async () => {
    for (const name of pages) {
      const { page } = await opened(name);
      const links = await page
        .locator('a')
        .evaluateAll((all) => all.map((a) => (a as HTMLAnchorElement).href));
      expect(links.length).toBeGreaterThan(1);
      for (const link of new Set(links)) expect(readFileSync(new URL(link)).length).toBeGreaterThan(100);
      await page.context().close();
    }
  });
});

test('a table is sorted by its column, then the other way, by keyboard alone', async () => {
  const { page } = await opened('b-blue-300w');
  const button = page
    .locator('table', { hasText: 'rising zero' })
    .locator('button', { hasText: '% of fund' });
  const cells = () =>
    page
      .locator('table', { hasText: 'rising zero' })
      .locator('tbody tr td:nth-child(3)')
      .evaluateAll((all) => all.map((cell) => Number((cell as HTMLElement).dataset.sort)));
  await button.focus();
  await page.keyboard.press('Enter');
  const up = await cells();
  expect(up).toEqual(up.toSorted((a, b) => a - b));
  await page.keyboard.press('Space');
  expect(await cells()).toEqual(up.toSorted((a, b) => b - a));
  await page.context().close();
});

test('hostile texts are shown and do nothing: no script, dialog, request, breach of policy or error', async () => {
  expect(hostile.size).toBe(hostileToPages.length + 1);
  const context = await browser.newContext({ viewport: { width: 390, height: 900 } });
  for (const [name, html] of hostile) {
    const page = await context.newPage();
    const told = listenToPage(page);
    await page.setContent(html);
    const { width, frames, footer } = await page.evaluate(() => ({
      width: document.documentElement.scrollWidth,
      frames: document.querySelectorAll('iframe,img,object').length,
      footer: document.querySelector('body > footer')?.textContent ?? '',
    }));
    expect({ name, told, width, frames }).toEqual({ name, told: [], width: 390, frames: 0 });
    expect(footer).toContain('not a certificate');
    await page.close();
  }
  await context.close();
});
