import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { smallCapture } from '../../cli/smallCapture.ts';
import { openBrowser } from '../openBrowser.ts';
import { drop, openPage, saved, settled } from './openPage.ts';

const PATIENT = { timeout: 30_000 };
const captures = resolve('captures');
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});

async function opened(file: string): Promise<{ page: Page; told: string[] }> {
  const opened = await openPage(browser);
  await opened.page.setInputFiles('#files', join(captures, file));
  await settled(opened.page, 1);
  return opened;
}

/** What has the focus: its name as far as it has one of its own, else its text. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { activeElement: at } = document;
    return at?.getAttribute('aria-label') || at?.id || at?.textContent?.trim() || '';
  });

/** Presses Tab until what has the focus fits; every stop on the way shows that it has it. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let stops = 0; stops < 150; stops++) {
    await page.keyboard.press('Tab');
    if (wanted.test(await focused(page))) return;
  }
  throw new Error(`no stop of the Tab key is ${wanted}`);
}

/** Start and end of the stretch that the wave shows, seconds. */
async function spanOf(page: Page): Promise<[number, number]> {
  const label = (await page.getAttribute('.wave-view svg', 'aria-label')) ?? '';
  const [, from, to, unit] = / from ([−\d.]+)\u00a0\S+ to ([−\d.]+)\u00a0(s|ms|µs):/.exec(label) ?? [];
  const seconds = { s: 1, ms: 1e-3, µs: 1e-6 }[unit as 's'];
  return [from, to].map((text) => Number(text?.replace('−', '-')) * seconds) as [number, number];
}

test('by keyboard alone: open an example, read the answer, claim something else, look closer, save', async () => {
  const { page, told } = await openPage(browser);
  await tabTo(page, /^A sine at 300 W/);
  await page.keyboard.press('Enter');
  await settled(page, 1);
  expect(await focused(page)).toBe('answer-heading');
  expect(await page.textContent('#answer-heading')).toMatch(/^Yes/);
  await tabTo(page, /^field-claims$/);
  await page.keyboard.press('Control+A');
  await page.keyboard.type('modified sine');
  await page.keyboard.press('Tab');
  await expect.poll(() => page.textContent('#answer-heading'), PATIENT).toMatch(/^No/);
  // The fields come after the wave and after what is saved.
  await page.evaluate(() => document.getElementById('answer-heading')?.focus());
  await tabTo(page, /^Result \(JSON\)$/);
  const { text } = await saved(page, () => page.keyboard.press('Enter'));
  expect(JSON.parse(text).results[0].claims).toMatchObject([{ text: 'modified sine', outcome: 'fail' }]);
  await tabTo(page, /^The wave, /);
  const [from, to] = await spanOf(page);
  await page.keyboard.press('+');
  await expect.poll(async () => (await spanOf(page))[1], PATIENT).toBeLessThan(to);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('End');
  await expect.poll(async () => (await spanOf(page))[0], PATIENT).toBeLessThan(from);
  await page.keyboard.press('Home');
  await expect.poll(() => spanOf(page), PATIENT).toEqual([from, to]);
  expect(told).toEqual([]);
  await page.context().close();
});

test('every stop of the Tab key can be seen', async () => {
  const { page } = await opened('b-blue-300w.csv');
  const unseen = new Set<string>();
  await page.keyboard.press('Tab');
  const first = await focused(page);
  for (let stops = 0; stops < 80; stops++) {
    const { name, isSeen } = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement;
      const marks = (element: Element | null | undefined): string => {
        if (element == null) return '';
        const { outlineStyle, stroke, strokeWidth } = getComputedStyle(element);
        return outlineStyle !== 'none'
          ? 'outline'
          : stroke !== 'none' && strokeWidth === '2px'
            ? 'stroke'
            : '';
      };
      return {
        name: at.outerHTML.slice(0, 120),
        isSeen:
          at === document.body ||
          marks(at) !== '' ||
          marks(at.closest('.button')) !== '' ||
          marks(at.querySelector('.reach')) !== '',
      };
    });
    if (!isSeen) unseen.add(name);
    await page.keyboard.press('Tab');
    if ((await focused(page)) === first) break;
  }
  expect([...unseen]).toEqual([]);
  await page.context().close();
});

test('who removes a capture by keys goes on at the next one', async () => {
  const { page } = await openPage(browser);
  await drop(
    page,
    ['one.csv', 'two.csv'].map((name) => ({ name, content: smallCapture() })),
  );
  await settled(page, 2);
  await tabTo(page, /^Remove one/);
  await page.keyboard.press('Enter');
  expect(await focused(page)).toBe('Remove two.csv');
  await page.keyboard.press('Enter');
  expect(await focused(page)).toBe('files');
  await page.context().close();
});

test('to who hears the page everything has a role and a name, and what happens is said', async () => {
  const { page } = await opened('b-blue-300w.csv');
  const status = page.getByRole('status');
  expect(await status.textContent()).toBe('Measured.');
  expect(await page.getByRole('article').getAttribute('aria-busy')).toBe('false');
  for (const [role, name] of [
    ['heading', /modified sine/],
    ['table', 'Captures on this page'],
    ['button', 'Remove b-blue-300w.csv'],
    ['textbox', 'Load on b-blue-300w.csv'],
    ['textbox', 'Unit under test'],
    ['combobox', 'Channel'],
    ['checkbox', 'Upside down'],
    ['img', /^The wave of channel CH2 from .* to .*: from −.* V to .* V\.$/],
    ['group', /^The wave, /],
    ['group', /^Harmonics as bars/],
    ['region', 'Before you connect anything'],
  ] as const) {
    expect(await page.getByRole(role, { name }).count(), `${role} ${name}`).toBe(1);
  }
  const level1 = page.getByRole('heading', { level: 1 });
  expect(await level1.count()).toBe(1);
  // A field that is wrong is told, with what is wrong.
  const nominal = page.getByLabel('Nominal', { exact: true });
  await nominal.fill('much');
  expect(await nominal.getAttribute('aria-invalid')).toBe('true');
  const described = (await nominal.getAttribute('aria-describedby'))?.split(' ') ?? [];
  const words = await Promise.all(described.map((id) => page.textContent(`[id="${id}"]`)));
  expect(words.join(' ')).toMatch(/is not a nominal voltage/);
  await page.context().close();
});

describe('the wave', () => {
  test('goes to the times that the answer names', async () => {
    const { page, told } = await opened('a-red-step-on.csv');
    const links = page.locator('#answer a.time');
    expect(await links.count()).toBeGreaterThan(2);
    for (const link of (await links.all()).slice(0, 4)) {
      await link.scrollIntoViewIfNeeded();
      const atS = Number(await link.getAttribute('data-at'));
      await link.click();
      await expect
        .poll(async () => {
          const [from, to] = await spanOf(page);
          return from <= atS + 1e-4 && atS - 1e-4 <= to;
        }, PATIENT)
        .toBe(true);
      expect(await page.evaluate(() => document.activeElement?.className)).toBe('wave-view');
    }
    expect(page.url()).not.toMatch(/#/);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('says in a sentence what lies between two marks, set by clicks or typed', async () => {
    const { page } = await opened('b-blue-300w.csv');
    const between = page.locator('.wave-between');
    await page.locator('.wave-view').scrollIntoViewIfNeeded();
    const box = (await page.locator('.wave-view svg').boundingBox())!;
    for (const share of [0.3, 0.6]) await page.mouse.click(box.x + share * box.width, box.y + box.height / 2);
    await expect
      .poll(() => between.textContent(), PATIENT)
      .toMatch(
        /^From .*\u00a0ms \(.*\u00a0V\) to .*\u00a0ms \(.*\u00a0V\): .*\u00a0ms, the time of one turn at .*\u00a0Hz, and .*\.$/,
      );
    expect(await page.inputValue('#mark-a')).toMatch(/^-?[\d.]+$/);
    await page.fill('#mark-a', '0');
    await page.fill('#mark-b', '10');
    await page.keyboard.press('Tab');
    expect(await between.textContent()).toMatch(/: 10\.00\u00a0ms, the time of one turn at 100\u00a0Hz/);
    // Of the whole record too a mark has the value of a sample, not of what its column spans; told anew, the new one.
    await page.fill('#mark-a', '5');
    await page.fill('#mark-b', '9.3');
    await page.keyboard.press('Tab');
    await expect.poll(() => between.textContent(), PATIENT).toMatch(/ms \(.*V\) to .*V\): /);
    const [, nearA, nearB] = /\((.*?)\).*\((.*?)\)/.exec((await between.textContent()) ?? '') ?? [];
    await page.click('text=Whole record');
    const [, a, b] = /\((.*?)\).*\((.*?)\)/.exec((await between.textContent()) ?? '') ?? [];
    expect([a, b]).toEqual([nearA, nearB]);
    await page.fill('#field-scale', '-1');
    await page.keyboard.press('Tab');
    const flipped = (text: string | undefined): string | undefined =>
      text?.startsWith('−') ? text.slice(1) : text === '0\u00a0V' ? text : `−${text}`;
    await expect
      .poll(async () => /\((.*?)\).*\((.*?)\)/.exec((await between.textContent()) ?? '')?.slice(1), PATIENT)
      .toEqual([flipped(nearA), flipped(nearB)]);
    await page.click('text=No marks');
    expect(await between.textContent()).toMatch(/^Click the wave at two places/);
    expect(await page.inputValue('#mark-b')).toBe('');
    await page.context().close();
  });

  test('is dragged, and zoomed by the wheel once it has the focus, the time under the pointer staying', async () => {
    const { page } = await opened('a-red-300w.csv');
    await page.locator('.wave-view').scrollIntoViewIfNeeded();
    const box = (await page.locator('.wave-view svg').boundingBox())!;
    const [x, y] = [box.x + 0.5 * box.width, box.y + 0.5 * box.height];
    const [from, to] = await spanOf(page);
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, -300);
    expect(await spanOf(page)).toEqual([from, to]);
    await page.locator('.wave-view').scrollIntoViewIfNeeded();
    await page.focus('.wave-view');
    await page.mouse.wheel(0, -300);
    await expect.poll(async () => (await spanOf(page))[1], PATIENT).toBeLessThan(to);
    const [nearFrom, nearTo] = await spanOf(page);
    await page.mouse.down();
    await page.mouse.move(x - 100, y, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => (await spanOf(page))[0], PATIENT).toBeGreaterThan(nearFrom);
    const [movedFrom, movedTo] = await spanOf(page);
    expect(Math.abs(movedTo - movedFrom - (nearTo - nearFrom))).toBeLessThan(5e-6);
    // A drag is no click: nothing was marked.
    expect(await page.textContent('.wave-between')).toMatch(/^Click/);
    await page.context().close();
  });
});

test('each harmonic says its order, value and limit where it has the focus', async () => {
  const { page } = await opened('b-blue-300w.csv');
  await tabTo(page, /^Order 2 /);
  const sentence = page.locator('.harmonic-told');
  await page.keyboard.press('ArrowRight');
  const third = (await sentence.textContent()) ?? '';
  expect(third).toMatch(
    /^Order 3 \(180\.\d\u00a0Hz\): [\d.]+ ± [\d.]+\u00a0% of the fundamental; limit .*\u00a0% in .*: (out|in)side\.$/,
  );
  expect(await focused(page)).toBe(third);
  await page.keyboard.press('End');
  expect(await sentence.textContent()).toMatch(/^Order 50 /);
  await page.keyboard.press('ArrowRight');
  expect(await sentence.textContent()).toMatch(/^Order 50 /);
  // One stop for the Tab key.
  await page.keyboard.press('Tab');
  expect(await focused(page)).not.toMatch(/^Order/);
  await page.keyboard.press('Shift+Tab');
  expect(await focused(page)).toMatch(/^Order 50 /);
  await page.context().close();
});
