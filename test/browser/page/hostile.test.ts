import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { smallCapture } from '../../cli/smallCapture.ts';
import { hostileTexts, hostileToPages } from '../../fixtures/hostileText.ts';
import { openBrowser } from '../openBrowser.ts';
import { drop, openPage, save, saved, settled } from './openPage.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});

/** A capture whose channel and remark say a text. */
function captureSaying(text: string): string {
  const cell = `"${text.replaceAll('"', '""')}"`;
  const rows = new TextDecoder()
    .decode(smallCapture())
    .split('\n')
    .filter((line) => /^-?\d/.test(line));
  return [
    `Remark,${cell}`,
    `Time (s),"${text.replaceAll('"', '""').replace(/[\r\n]/g, ' ')} (V)"`,
    ...rows,
  ].join('\n');
}

/** Elements that a page without guests has none of. */
const guests = (page: Page): Promise<string[]> =>
  page.evaluate(() => [
    ...[...document.querySelectorAll('img,iframe,object,embed,base,link,body script + script')].map(
      ({ outerHTML }) => outerHTML.slice(0, 200),
    ),
    ...[...document.querySelectorAll('*')].flatMap((element) =>
      [...element.attributes]
        .filter(({ name, value }) => /^on/.test(name) || (name === 'href' && !/^#/.test(value)))
        .map(({ name, value }) => `${name}=${value.slice(0, 100)}`),
    ),
  ]);

test('names of files and channels, and what is told, are shown and do nothing', async () => {
  const { page, told } = await openPage(browser, { viewport: { width: 390, height: 900 } });
  const before = await page.locator('script').count();
  await drop(
    page,
    hostileTexts.map((text) => ({ name: `${text}.csv`, content: captureSaying(text) })),
  );
  await settled(page, hostileTexts.length);
  const { text } = await saved(page, () => page.click('#save-all-json'));
  expect(JSON.parse(text).results.length).toBe(hostileTexts.length);
  const looks = page.locator('#capture-table tbody th button');
  let measured = 0;
  for (const [i, hostile] of hostileTexts.entries()) {
    if (!hostileToPages.includes(hostile)) continue;
    await looks.nth(i).click();
    if (!(await page.isVisible('#known'))) continue;
    measured++;
    await page.fill('#field-label', hostile);
    await page.fill('#field-load', hostile);
    await page.fill('#field-claims', hostile);
    await page.fill('#field-nominal', hostile);
    await page.press('#field-nominal', 'Tab');
    // A browser asks before it saves what a click of seconds ago wanted.
    await settled(page, hostileTexts.length);
    await save(page, 'svg');
    await page.fill('#field-claims', '');
    await page.fill('#field-nominal', '');
    expect({ hostile, guests: await guests(page) }).toEqual({ hostile, guests: [] });
    expect({ hostile, width: await page.evaluate(() => document.documentElement.scrollWidth) }).toEqual({
      hostile,
      width: 390,
    });
  }
  expect(measured).toBeGreaterThan(0.8 * hostileToPages.length);
  expect(await page.locator('script').count()).toBe(before);
  const sitting = await saved(page, () => page.click('#save-sitting'));
  await page.click('#remove-all');
  await drop(page, [{ name: 'sitting.json', content: sitting.bytes }]);
  await settled(page, hostileTexts.length);
  expect(await guests(page)).toEqual([]);
  expect(told).toEqual([]);
  await page.context().close();
});

test('the page’s own policy lets it neither run text nor reach a network', async () => {
  const { page, told } = await openPage(browser);
  const failures: string[] = [];
  page.on('requestfailed', (request) => failures.push(`${request.url()}: ${request.failure()?.errorText}`));
  const tried = await page.evaluate(async () => {
    const outcome = async (work: () => unknown): Promise<string> => {
      try {
        await work();
        return 'done';
      } catch {
        return 'refused';
      }
    };
    // What a test's own tool runs at once is allowed all; what comes later is not.
    const later = (work: () => unknown): Promise<unknown> =>
      new Promise((done) => setTimeout(done)).then(work);
    const script = document.createElement('script');
    script.textContent = 'document.title = "owned"';
    document.body.append(script);
    const image = new Image();
    image.src = 'https://example.com/x.png';
    return {
      // biome-ignore lint/security/noGlobalEval: that it fails is what is tested.
      eval: await outcome(() => later(() => globalThis.eval('1'))),
      fetch: await outcome(() => fetch('https://example.com/')),
      beacon: navigator.sendBeacon('https://example.com/') ? 'done' : 'refused',
      image: await outcome(() => image.decode()),
      title: document.title,
    };
  });
  expect(tried).toMatchObject({ eval: 'refused', fetch: 'refused', image: 'refused' });
  expect(tried.title).toBe('Sineassay: is it a sine?');
  const breaches = (): (string | undefined)[] =>
    told.filter((line) => line.startsWith('policy: ')).map((line) => line.split(' ')[1]);
  for (const directive of ['script-src', 'script-src-elem', 'connect-src', 'img-src'])
    await expect.poll(breaches).toContain(directive);
  // The browser's own word for what a policy stopped before it was sent.
  expect(failures).toEqual(told.filter((line) => line.startsWith('http')).map((url) => `${url}: csp`));
  await page.context().close();
});
