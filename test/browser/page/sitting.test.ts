import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { benchFolder } from '../../cli/benchFolder.ts';
import { smallCapture } from '../../cli/smallCapture.ts';
import { openBrowser } from '../openBrowser.ts';
import { drop, dropPaths, openPage, save, saved, settled } from './openPage.ts';

const PATIENT = { timeout: 30_000 };
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});

const kinds = (page: Page): Promise<string[]> =>
  page.locator('#capture-table tbody td:nth-child(4)').allTextContents();
const names = (page: Page): Promise<string[]> =>
  page.locator('#capture-table tbody th button').allTextContents();

test('three bad files at once each say what is wrong; the good one among them is measured', async () => {
  const { page, told } = await openPage(browser);
  await drop(page, [
    { name: 'empty.csv', content: '' },
    { name: 'diary.csv', content: 'Dear diary,\nit hummed all evening.\n'.repeat(30) },
    { name: 'picture.csv', content: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13) },
    { name: 'good.csv', content: readFileSync('captures/a-red-step-on.csv') },
  ]);
  await settled(page, 4);
  const shown = await kinds(page);
  expect(shown[0]).toMatch(/0 bytes|empty/);
  expect(shown[1]).toMatch(/rows of numbers/);
  expect(shown[2]).toMatch(/picture/);
  expect(shown[3]).toMatch(/^When the load came on, .*; pure sine after that$/);
  expect(await page.textContent('#answer-heading')).toMatch(/sine/);
  await expect.poll(() => page.textContent('#status')).toBe('Measured 1 of 4; 3 can’t be measured.');
  await page.click('text=diary.csv');
  expect(await page.textContent('#failure')).toMatch(/^diary\.csv.*CSV/s);
  // Nothing of another capture stands under it.
  for (const part of ['#known', '#wave-part', '#course', '#details'])
    expect(await page.isVisible(part), part).toBe(false);
  const { text } = await saved(page, () => page.click('#save-all-json'));
  const { results } = JSON.parse(text);
  expect(results.map((one: { error?: { code: string } }) => one.error?.code)).toEqual([
    ...['file.empty', 'rows.none', 'file.foreign', undefined],
  ]);
  expect(told).toEqual([]);
  await page.context().close();
});

test('a folder is taken with what is under it, by the button and by a drop; what is no capture is left out', async () => {
  const folder = benchFolder({
    'evening/idle.csv': smallCapture(),
    'evening/deep/load.csv': smallCapture({ rmsV: 118 }),
    'evening/notes.md': '# notes',
    'evening/screen.png': 'picture',
    'evening/.hidden': 'x',
    'evening/plan.yaml': 'units: []',
  });
  for (const act of [
    (page: Page) => dropPaths(page, [join(folder, 'evening')]),
    (page: Page) => page.setInputFiles('#folder', join(folder, 'evening')),
  ]) {
    const { page, told } = await openPage(browser);
    await act(page);
    await settled(page, 2);
    expect(await kinds(page)).toEqual(['pure sine', 'pure sine']);
    expect((await names(page)).sort()).toEqual(['idle.csv', 'load.csv']);
    const { result } = await save(page, 'json').then(({ text }) => ({ result: JSON.parse(text).results[0] }));
    expect(result.file).toMatch(/^evening\/(deep\/load|idle)\.csv$/);
    expect(told).toEqual([]);
    await page.context().close();
  }
});

test('two files of one name are two captures', async () => {
  const { page } = await openPage(browser);
  await drop(page, [{ name: 'CH1.csv', content: smallCapture() }]);
  await drop(page, [{ name: 'CH1.csv', content: smallCapture({ rmsV: 110 }) }]);
  await settled(page, 2);
  expect(await names(page)).toEqual(['CH1.csv', 'CH1 (2).csv']);
  await page.context().close();
});

describe('a sitting', () => {
  test('is saved, and opened again with all that was told', async () => {
    const { page } = await openPage(browser);
    await drop(page, [
      { name: 'first.csv', content: smallCapture() },
      { name: 'bad.csv', content: 'none' },
      { name: 'second.csv', content: smallCapture({ rmsV: 1.2 }) },
    ]);
    await settled(page, 3);
    await page.click('text=second.csv');
    await page.fill('#field-scale', '100');
    await page.setChecked('#field-inverted', true);
    await page.fill('#field-claims', 'pure sine\nTHD < 3 %');
    await page.fill('#field-label', 'Inverter <b>“A”</b> äöü');
    await page.click('#told summary');
    await page.fill('#field-gainPercent', '1.5');
    await page.fill('[aria-label="Load on first.csv"]', 'no load');
    // At once: a result is saved as the capture is told by now.
    const before = await saved(page, () => page.click('#save-all-json'));
    const sitting = await saved(page, () => page.click('#save-sitting'));
    expect(sitting.name).toBe('sitting.json');
    const folder = benchFolder({ 'sitting.json': sitting.bytes });

    for (const act of [
      (other: Page) => other.setInputFiles('#sitting', join(folder, 'sitting.json')),
      (other: Page) => dropPaths(other, [join(folder, 'sitting.json')]),
    ]) {
      const { page: other, told } = await openPage(browser);
      await act(other);
      await settled(other, 3);
      const after = await saved(other, () => other.click('#save-all-json'));
      expect(after.text).toBe(before.text);
      await other.click('text=second.csv');
      expect(await other.inputValue('#field-scale')).toBe('100');
      expect(await other.isChecked('#field-inverted')).toBe(true);
      expect(await other.inputValue('#field-claims')).toBe('pure sine\nTHD < 3 %');
      expect(await other.inputValue('#field-gainPercent')).toBe('1.5');
      expect(await other.inputValue('[aria-label="Load on first.csv"]')).toBe('no load');
      expect((await saved(other, () => other.click('#save-sitting'))).text).toBe(sitting.text);
      expect(told).toEqual([]);
      await other.context().close();
    }
    await page.context().close();
  });

  test('with a word that nobody understands is opened all the same, and the field says so', async () => {
    const { page } = await openPage(browser);
    await drop(page, [{ name: 'one.csv', content: smallCapture() }]);
    await settled(page, 1);
    await page.fill('#field-claims', 'as good as new');
    await expect.poll(() => page.textContent('#fault-claims'), PATIENT).not.toBe('');
    expect(await page.getAttribute('#field-claims', 'aria-invalid')).toBe('true');
    const { text } = await saved(page, () => page.click('#save-sitting'));
    await page.context().close();
    const { page: other, told } = await openPage(browser);
    await drop(other, [{ name: 'sitting.json', content: text }]);
    await settled(other, 1);
    expect(await kinds(other)).toEqual(['pure sine']);
    expect(await other.inputValue('#field-claims')).toBe('as good as new');
    expect(await other.textContent('#fault-claims')).not.toBe('');
    expect(told).toEqual([]);
    await other.context().close();
  });

  test.each([
    ['no JSON', 'nonsense'],
    ['another JSON', '{"schema":"sineassay/measure@1","results":[]}'],
    ['null', 'null'],
    [
      'a capture cut short',
      '{"schema":"sineassay/sitting@1","captures":[{"file":"a.csv","gzip":"H4sIAAAA"}]}',
    ],
    ['no base64', '{"schema":"sineassay/sitting@1","captures":[{"file":"a.csv","gzip":"ä"}]}'],
  ])('that is damaged is refused in a sentence: %s', async (_, text) => {
    const { page, told } = await openPage(browser);
    await drop(page, [{ name: 'sitting.json', content: text }]);
    await expect.poll(() => page.textContent('#status')).toMatch(/sitting/);
    expect(await page.textContent('#status')).not.toMatch(/defect/);
    expect(await page.isVisible('#captures')).toBe(false);
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('a capture that is taken off the page leaves nothing behind, the last one leads back to the start', async () => {
  const { page, told } = await openPage(browser);
  await drop(
    page,
    ['one.csv', 'two.csv', 'three.csv'].map((name) => ({ name, content: smallCapture() })),
  );
  await settled(page, 3);
  await page.click('[aria-label="Remove one.csv"]');
  expect(await names(page)).toEqual(['two.csv', 'three.csv']);
  await page.click('#remove-all');
  expect(await page.isVisible('#welcome')).toBe(true);
  expect(await page.isVisible('#answer')).toBe(false);
  expect(await page.isVisible('#captures')).toBe(false);
  // What was asked of them meanwhile comes to nothing.
  await page.setViewportSize({ width: 700, height: 900 });
  await drop(page, [{ name: 'four.csv', content: smallCapture() }]);
  await settled(page, 1);
  expect(told).toEqual([]);
  await page.context().close();
});

test('a file that went away since it was chosen is refused in a sentence', async () => {
  const folder = benchFolder({ 'one.csv': smallCapture() });
  const path = join(folder, 'one.csv');
  const { page, told } = await openPage(browser);
  await page.setInputFiles('#files', path);
  await settled(page, 1);
  // Told another rate, it is read again.
  writeFileSync(path, `${readFileSync(path, 'utf8')}0,0\n`);
  await page.click('#told summary');
  await page.fill('#field-sampleRateHz', '30000');
  await expect.poll(() => page.textContent('#failure'), PATIENT).toMatch(/can’t be read/);
  rmSync(path);
  expect(told).toEqual([]);
  await page.context().close();
});

test('what one capture was told the others can be told, but for load and meter', async () => {
  const { page } = await openPage(browser);
  await drop(
    page,
    ['one.csv', 'two.csv'].map((name) => ({ name, content: smallCapture() })),
  );
  await settled(page, 2);
  await page.fill('#field-label', 'Inverter A');
  await page.fill('#field-load', '300 W');
  await page.fill('#field-meterV', '119');
  await page.click('#share-told');
  await page.click('text=two.csv');
  expect(await page.inputValue('#field-label')).toBe('Inverter A');
  expect(await page.inputValue('#field-load')).toBe('');
  expect(await page.inputValue('#field-meterV')).toBe('');
  await settled(page, 2);
  await page.context().close();
});
