import type { Page } from 'playwright-core';

/** What a page at peace does not do: lines of the console, errors, dialogs. Filled as long as the page lives. */
export function listen(page: Page): string[] {
  const told: string[] = [];
  page.on('console', (message) => told.push(message.text()));
  page.on('pageerror', (error) => told.push(String(error)));
  page.on('dialog', (dialog) => {
    told.push(dialog.message());
    void dialog.dismiss();
  });
  return told;
}
