import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import { writeFigures } from '../../../src/cli/report/writeGallery.ts';
import { figureRows } from '../../../src/words/figureRows.ts';
import { assays } from '../../fixtures/assays.ts';
import { hostileTexts } from '../../fixtures/hostileText.ts';
import { pageFaults } from '../../fixtures/pageFaults.ts';
import { benchFolder } from '../benchFolder.ts';
import { measuredResults } from '../measuredResults.ts';
import { runCommand } from '../runCommand.ts';
import { smallCapture } from '../smallCapture.ts';

const folder = benchFolder({
  'a.csv': smallCapture(),
  'b.csv': smallCapture({ shape: 'modified' }),
  'index.csv': smallCapture({ seed: 3 }),
  'table/.keep': '',
  'site/index.html': '<!doctype html><title>mine</title>',
});
const text = (path: string): string => readFileSync(join(folder, path), 'utf8');
const listed = (path: string): (string | undefined)[] =>
  [...new JSDOM(text(path)).window.document.querySelectorAll<HTMLElement>('.entry')].map(
    ({ dataset }) => dataset.file,
  );
const all = ['--html', '--markdown', '--csv', '--png', '--claim', 'pure sine'];

test('report writes a page, a text to paste and a table, and a gallery of them', async () => {
  const { code, stderr } = await runCommand(['report', 'a.csv', '--out', 'out', ...all], folder);
  expect([code, stderr]).toEqual([0, '']);
  expect(readdirSync(join(folder, 'out')).sort()).toEqual([
    ...['a.html', 'a.md', 'a.png', 'a.svg', 'figures.csv', 'index.html'],
  ]);
  for (const page of ['out/a.html', 'out/index.html']) {
    expect(pageFaults(text(page))).toEqual([]);
    expect(text(page)).toMatch(/@font-face\{font-family:'Source Sans 3';[^}]*url\(data:font\/woff2;base64,/);
  }
  const links = new JSDOM(text('out/index.html')).window.document.querySelectorAll('.entry .links a');
  expect([...links].map((link) => link.getAttribute('href'))).toEqual([
    ...['./a.svg', './a.html', './a.md', './a.png'],
  ]);
});

test('the table holds what the JSON holds', async () => {
  const run = await runCommand(['report', 'a.csv', 'b.csv', '--out', 'both', '--csv', '--json'], folder);
  const [heads = [], ...rows] = parse(text('both/figures.csv')) as string[][];
  const cells = (heading: string): (string | undefined)[] => rows.map((row) => row[heads.indexOf(heading)]);
  const results = measuredResults(run);
  expect(cells('voltage RMS (V)').map(Number)).toEqual(results.map(({ voltage }) => voltage?.rmsV.value));
  expect(cells('sha256')).toEqual(results.map(({ sha256 }) => sha256));
  expect(text('both/figures.csv')).toMatch(/\r\n$/);
});

test('a spreadsheet takes no text for a formula, and a number below zero stays one', async () => {
  const { result } = assays.goodSine!();
  const voltage = { ...result.voltage!, troughV: { value: -12.3, uncertainty: 0.1 } };
  const results = hostileTexts.map((label) => ({ ...result, voltage, label, load: label }));
  await writeFigures(results, join(folder, 'table'), false);
  const rows = parse(text('table/figures.csv')) as string[][];
  expect(rows).toHaveLength(1 + results.length);
  expect(rows.flat().filter((cell) => /^[=+@\t\r\uff1d\uff0b\uff0d\uff20]/.test(cell))).toEqual([]);
  const dashed = rows.flat().filter((cell) => cell.startsWith('-'));
  const below = figureRows(voltage, 'V').flatMap(([, { value }]) =>
    value !== null && value < 0 ? [value] : [],
  );
  expect(new Set(dashed.map(Number))).toEqual(new Set(below));
  expect(dashed).toContain('-12.3');
  expect(rows.flat()).toContain("'=1+1");
});

test('sheets of earlier runs stay listed; one that was changed, and a picture of another kind, are told', async () => {
  await runCommand(['report', 'a.csv', '--out', 'grown'], folder);
  await runCommand(['report', 'index.csv', '--out', 'grown', '--html'], folder);
  writeFileSync(join(folder, 'grown', 'logo.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(
    join(folder, 'grown', 'changed.svg'),
    text('grown/a.svg').replace('"kind":"pure sine"', '"kind":"square"'),
  );
  await runCommand(['bench', '0W=a.csv', '300W=b.csv', '--out', 'grown', '--html', '--markdown'], folder);
  // The gallery has the name index.html, so that a capture called index gets another.
  expect(listed('grown/index.html')).toEqual(['sweep-unit.svg', 'a.svg', 'index-2.svg']);
  const unread = new JSDOM(text('grown/index.html')).window.document.querySelectorAll('.unread li');
  expect([...unread].map(({ textContent }) => textContent)).toEqual([
    'changed.svg: it was changed after it was written; “sineassay recheck” says where',
    'logo.svg: The file carries no result.',
  ]);
  expect(pageFaults(text('grown/bench.html'))).toEqual([]);
  expect(text('grown/bench.md')).toContain('](./sweep-unit.svg)');
});

test('a run says the same twice, byte for byte', async () => {
  const words = ['report', 'a.csv', 'b.csv', ...all, '--out'];
  await runCommand([...words, 'once'], folder);
  await runCommand([...words, 'twice'], folder);
  for (const name of readdirSync(join(folder, 'once'))) {
    expect({ name, same: text(`once/${name}`) === text(`twice/${name}`) }).toEqual({ name, same: true });
  }
});

test('a page of one’s own called index.html is left alone and told; --no-gallery asks for none', async () => {
  const { code, stderr } = await runCommand(['report', 'a.csv', '--out', 'site'], folder);
  expect(code).toBe(2);
  expect(stderr).toMatch(/^site\/index\.html: [^\n]+\n$/);
  expect(text('site/index.html')).toContain('mine');
  const without = await runCommand(['report', 'a.csv', '--out', 'site', '--no-gallery'], folder);
  expect([without.code, without.stderr]).toEqual([0, '']);
});
