import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { inject } from 'vitest';
import { listen } from '../listen.ts';

export interface OpenedPage {
  readonly page: Page;
  /**
   * All that a page at peace does not do: errors and other lines of the console, dialogs, breaches of its policy, and
   * requests for anything but its own text.
   */
  readonly told: string[];
}

/** The built page from the file system, in a browser without a network. */
export async function openPage(browser: Browser, options: BrowserContextOptions = {}): Promise<OpenedPage> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  await context.setOffline(true);
  const page = await context.newPage();
  const told = listen(page);
  const address = pathToFileURL(inject('page')).href;
  context.on('request', (request) => {
    const url = request.url();
    if (url !== address && !/^(blob:null|data:font|data:image\/svg)/.test(url)) told.push(url.slice(0, 200));
  });
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
      console.error(`policy: ${violatedDirective} ${blockedURI}`),
    );
  });
  await page.goto(address);
  await page.evaluate(() => document.fonts.ready);
  return { page, told };
}

export interface DroppedFile {
  readonly name: string;
  readonly content: Uint8Array | string;
}

/** Drops files on the page. Their names may be such as no file system takes. */
export async function drop(page: Page, files: readonly DroppedFile[]): Promise<void> {
  const given = files.map(({ name, content }) => ({
    name,
    base64: Buffer.from(content).toString('base64'),
  }));
  await page.evaluate((all) => {
    const transfer = new DataTransfer();
    for (const { name, base64 } of all) {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      transfer.items.add(new File([bytes], name));
    }
    for (const type of ['dragenter', 'dragover', 'drop']) {
      document.body.dispatchEvent(
        new DragEvent(type, { dataTransfer: transfer, bubbles: true, cancelable: true }),
      );
    }
  }, given);
}

/** Drops files and folders of the file system, as the browser does it where a person lets go of them. */
export async function dropPaths(page: Page, paths: readonly string[]): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const data = { items: [], files: [...paths], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
    await session.send('Input.dispatchDragEvent', { type, x: 300, y: 300, data });
  }
  await session.detach();
}

/** Waits until nothing is being read or measured, and `count` captures are on the page. */
export async function settled(page: Page, count: number): Promise<void> {
  await page.waitForFunction((wanted) => {
    const rows = [...document.querySelectorAll('#capture-table tbody tr')];
    const isBusy = rows.some((row) => /waits|%$/.test(row.children[3]?.textContent ?? ''));
    const answer = document.getElementById('answer');
    return rows.length === wanted && !isBusy && answer?.getAttribute('aria-busy') !== 'true';
  }, count);
}

/** What the browser saves when something is done: the file's name and its text. */
export async function saved(
  page: Page,
  act: () => Promise<void>,
): Promise<{ readonly name: string; readonly text: string; readonly bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download'), act()]);
  const bytes = readFileSync(await download.path());
  return { name: download.suggestedFilename(), text: bytes.toString('utf8'), bytes };
}

/** Clicks a button that saves something of the answer. */
export function save(page: Page, what: string): ReturnType<typeof saved> {
  return saved(page, () => page.click(`[data-save="${what}"]`));
}
