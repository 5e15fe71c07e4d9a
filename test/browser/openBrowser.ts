import { type Browser, chromium } from 'playwright-core';
import { afterAll } from 'vitest';

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Chromium without a window, for the tests of one file; CHROMIUM names another than Debian's. */
export async function openBrowser(): Promise<Browser> {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: flags,
  });
  afterAll(() => browser.close());
  return browser;
}
