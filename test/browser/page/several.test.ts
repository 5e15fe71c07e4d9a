import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { benchFolder } from '../../cli/benchFolder.ts';
import { runCommand } from '../../cli/runCommand.ts';
import { axeViolations } from '../axeViolations.ts';
import { openBrowser } from '../openBrowser.ts';
import { dropPaths, type OpenedPage, openPage, saved, settled } from './openPage.ts';

const red = ['a-red-000w.csv', 'a-red-300w.csv', 'a-red-600w.csv', 'a-red-900w.csv'];
const green = ['c-green-000w.csv', 'c-green-150w.csv'];
const loads = new Map([
  ['a-red-000w.csv', 'no load'],
  ['a-red-300w.csv', '300 W heater'],
  ['a-red-600w.csv', '600 W'],
  ['a-red-900w.csv', '900 W'],
  ['c-green-000w.csv', '0 W'],
  ['c-green-150w.csv', '0.15 kW'],
]);
const folder = benchFolder(
  Object.fromEntries(
    [...red, ...green, 'a-red-step-on.csv', 'b-blue-600w.csv', 'c-green-transfer.csv'].map((name) => [
      name,
      readFileSync(join('captures', name)),
    ]),
  ),
);
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});

/** The page with captures measured. */
async function opened(names: readonly string[], options: BrowserContextOptions = {}): Promise<OpenedPage> {
  const { page, told } = await openPage(browser, options);
  await dropPaths(
    page,
    names.map((name) => join(folder, name)),
  );
  await settled(page, names.length);
  await measured(page);
  return { page, told };
}

/** Waits until no capture is still measured. */
async function measured(page: Page): Promise<void> {
  await page.waitForFunction(() => document.getElementById('several')?.getAttribute('aria-busy') !== 'true');
}

/** Looks at a capture: rows move while the names of units come into the table, and a click may go beside one. */
async function look(page: Page, name: string): Promise<void> {
  const button = page.getByRole('button', { name, exact: true });
  const row = page.locator('#capture-table tr', { has: button });
  await expect
    .poll(async () => {
      await button.click();
      return row.getAttribute('aria-current');
    })
    .toBe('true');
}

async function tellLoads(page: Page, names: readonly string[]): Promise<void> {
  for (const name of names) await page.getByLabel(`Load on ${name}`).fill(loads.get(name)!);
  await measured(page);
}

/** The sheet of a part of the page, as it is saved. */
function sheetOf(page: Page, part: string): ReturnType<typeof saved> {
  const button = page.locator(part).getByRole('button', { name: 'Save sheet (SVG)' }).first();
  return saved(page, () => button.click());
}

/** Waits for what a part says once it has heard of what was told last. */
async function says(page: Page, part: string, words: RegExp): Promise<void> {
  await page.locator(`${part} .said`).filter({ hasText: words }).waitFor();
}

describe('two captures', () => {
  test.each([
    ['of two instruments', false],
    ['through one instrument', true],
  ])('%s: the sheet saved is the command’s, byte for byte', async (_, isOne) => {
    const { page, told } = await opened(['a-red-300w.csv', 'b-blue-600w.csv']);
    if (isOne) await page.getByLabel('Both through one instrument').check();
    await page.locator('#overlay summary').click();
    const whose = isOne ? 'Taken with one instrument' : 'Taken as of two instruments';
    await page.locator('#overlay .tables').filter({ hasText: whose }).waitFor();
    const { name, text } = await sheetOf(page, '#overlay');
    await runCommand(
      ['compare', 'a-red-300w.csv', 'b-blue-600w.csv', '--out', '.', '--force'].concat(
        isOne ? ['--same-instrument'] : [],
      ),
      folder,
    );
    expect(name).toBe('compare-a-red-300w-b-blue-600w.svg');
    expect(text).toBe(readFileSync(join(folder, name), 'utf8'));
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('change sides, and what differs turns about', async () => {
    const { page } = await opened(['a-red-300w.csv', 'b-blue-600w.csv']);
    await page.locator('#overlay summary').click();
    const thd = page.locator('#overlay .tables tr', { hasText: 'THD' }).first().locator('td').nth(2);
    await says(page, '#overlay', /B has more distortion/);
    const before = await thd.textContent();
    await page.getByLabel('A', { exact: true }).selectOption({ label: 'b-blue-600w.csv' });
    await page.getByLabel('B', { exact: true }).selectOption({ label: 'a-red-300w.csv' });
    await says(page, '#overlay', /B has less distortion/);
    expect(before).toMatch(/^\+/);
    expect(await thd.textContent()).toBe(before?.replace('+', '−'));
    await page.context().close();
  });

  test('become one: nothing is held against another any more', async () => {
    const { page } = await opened(['a-red-300w.csv', 'b-blue-600w.csv']);
    await says(page, '#overlay', /distortion/);
    await page.getByRole('button', { name: 'Remove b-blue-600w.csv' }).click();
    expect(await page.locator('#several').isVisible()).toBe(false);
    await page.context().close();
  });
});

describe('captures at several loads', () => {
  test('the sheet saved is the bench test’s, byte for byte; and that of two units', async () => {
    const unitsTold = [
      {
        ...{ label: 'Inverter A (red case)', captures: red, steps: ['a-red-step-on.csv'], transfers: [] },
        claims: ['pure sine', '120 V ±5 %', 'THD < 5 %'],
      },
      {
        ...{ label: 'Inverter C', captures: green, steps: [], transfers: ['c-green-transfer.csv'] },
        claims: ['230 V ±5 %', 'transfer < 20 ms'],
      },
    ];
    const { page, told } = await opened(
      unitsTold.flatMap(({ captures, steps, transfers }) => [...captures, ...steps, ...transfers]),
    );
    await tellLoads(page, [...red, ...green]);
    for (const { label, claims, captures, steps, transfers } of unitsTold) {
      for (const [i, name] of [...captures, ...steps, ...transfers].entries()) {
        await look(page, name);
        await page.getByLabel('Unit under test').fill(label);
        if (i === 0) await page.getByLabel('What the box claims').fill(claims.join('\n'));
      }
    }
    await look(page, red[0]!);
    await measured(page);
    await page.getByLabel('Unit', { exact: true }).selectOption('Inverter A (red case)');
    await page.getByLabel('Rated power, W').fill('600');
    await says(page, '#sweep .swept', /“power 600 W” probably holds/);
    await expect.poll(() => page.textContent('#sweep')).not.toContain('Left out');
    const sweep = await sheetOf(page, '#sweep .swept');
    const comparison = await sheetOf(page, '#sweep .beside');
    const units = unitsTold.map(({ label, claims, captures, steps, transfers }, i) => ({
      ...{ name: label, label, claims: i === 0 ? [...claims, 'power 600 W'] : claims },
      captures: captures.map((file) => ({ file, load: loads.get(file)!.replace(' heater', '') })),
      steps: steps.map((file) => ({ file })),
      transfers: transfers.map((file) => ({ file })),
    }));
    // JSON is YAML.
    writeFileSync(join(folder, 'plan.yaml'), JSON.stringify({ units }));
    const { stderr } = await runCommand(['bench', 'plan.yaml', '--out', 'bench', '--force'], folder);
    expect(stderr).toBe('');
    expect(sweep.name).toBe('sweep-Inverter_A_red_case_.svg');
    expect(sweep.text).toBe(readFileSync(join(folder, 'bench', sweep.name), 'utf8'));
    expect(comparison.text).toBe(readFileSync(join(folder, 'bench', 'comparison.svg'), 'utf8'));
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('a load typed into the table moves its point', async () => {
    const { page } = await opened(red.slice(0, 3));
    expect(await page.locator('#sweep .hint').isVisible()).toBe(true);
    await tellLoads(page, red.slice(0, 3));
    await says(page, '#sweep', /from nothing to 600 watts/);
    await page.getByLabel('Load on a-red-600w.csv').fill('550 W');
    await says(page, '#sweep', /from nothing to 550 watts/);
    await page.locator('#sweep summary').first().click();
    await page.locator('#sweep .sheet svg', { hasText: 'from nothing to 550 watts' }).waitFor();
    await page.getByLabel('Rated power, W').fill('300');
    await says(page, '#sweep', /“power 300 W”/);
    for (const name of red.slice(0, 3)) {
      await page.getByRole('button', { name, exact: true }).click();
      await page.getByLabel('Unit under test').fill('Red');
    }
    // Under another name it is rated the same.
    await says(page, '#sweep', /^Red: .*“power 300 W”/);
    expect(await page.getByLabel('Rated power, W').inputValue()).toBe('300');
    await page.getByLabel('Rated power, W').fill('');
    await says(page, '#sweep', /from nothing to 550 watts/);
    await page.getByLabel('Load on a-red-600w.csv').fill('what the kettle takes');
    await says(page, '#sweep', /from nothing to 300 watts/);
    expect(await page.locator('#sweep .said').textContent()).toContain(
      'Left out, for their load in watts or their unit is not told: a-red-600w.csv.',
    );
    await page.context().close();
  });
});

test('a load step is drawn under the wave, beside its table', async () => {
  const { page, told } = await opened(['a-red-step-on.csv']);
  await page.locator('#changes svg').waitFor();
  expect(await page.locator('#course').textContent()).toContain('Load step 1');
  expect(await page.locator('#several').isVisible()).toBe(false);
  expect(told).toEqual([]);
  await page.context().close();
});

test.each([
  [1440, false],
  [768, true],
  [390, true],
])('at %i px, dark %s: axe finds nothing, nothing is wider than the window', async (width, dark) => {
  const names = [...red.slice(0, 2), 'a-red-step-on.csv'];
  const { page, told } = await opened(names, {
    viewport: { width, height: 900 },
    colorScheme: dark ? 'dark' : 'light',
  });
  await tellLoads(page, names.slice(0, 2));
  await says(page, '#sweep', /from nothing to 300 watts/);
  await page.getByRole('button', { name: 'a-red-step-on.csv', exact: true }).click();
  for (const part of ['#sweep .swept', '#overlay']) {
    await page.locator(`${part} summary`).click();
    await page.locator(`${part} .sheet svg`).waitFor();
  }
  await page.locator('#changes svg').waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  // Where a sheet moves sideways, keys move it too.
  const reached = await page
    .locator('.sheet:visible')
    .evaluateAll((all) =>
      all.map((one) => one.scrollWidth <= one.clientWidth || (one as HTMLElement).tabIndex === 0),
    );
  expect(reached).toEqual([true, true, true]);
  expect(await axeViolations(page)).toEqual([]);
  expect(told).toEqual([]);
  await page.context().close();
});
