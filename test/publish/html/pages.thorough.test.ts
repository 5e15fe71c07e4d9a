import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { wattsInWords } from '../../../src/assay/loadSeen.ts';
import type { Evidence } from '../../../src/draw/evidence.ts';
import { benchPage } from '../../../src/publish/html/benchPage.ts';
import { capturePage } from '../../../src/publish/html/capturePage.ts';
import { galleryPage } from '../../../src/publish/html/galleryPage.ts';
import { assays } from '../../fixtures/assays.ts';
import { benches } from '../../fixtures/benches.ts';
import { hostileTexts } from '../../fixtures/hostileText.ts';
import { openedSheet, press, sheetSaying, waveSheet } from '../../fixtures/openedSheets.ts';
import { pageFaults } from '../../fixtures/pageFaults.ts';
import { someOf } from '../../samples.ts';

const common = { schema: 'sineassay/sheet@1', program: '0.0.0' } as const;
const good = assays.goodSine!();
const documentOf = (page: string): Document => new JSDOM(page).window.document;
const empty = { program: '0.0.0', sheets: [], unread: [], others: [] };

describe('the page of a capture', () => {
  test.each(someOf(Object.keys(assays), 8))('%s: runs and fetches nothing but its own', (name) => {
    const page = capturePage(press, [waveSheet(assays[name]!())], [{ name: 'a.svg', what: 'sheet' }]);
    expect(pageFaults(page)).toEqual([]);
  });

  test('every hostile text leaves it whole and inert', () => {
    for (const text of someOf(hostileTexts)) {
      const page = capturePage(press, [sheetSaying(good, text)], []);
      expect(pageFaults(page)).toEqual([]);
    }
  });

  test('says the answer first and holds every harmonic and finding as numbers to sort by', () => {
    const assay = assays.flatTop!();
    const document = documentOf(capturePage(press, [waveSheet(assay)], []));
    expect(document.querySelector('h1')?.textContent).toMatch(/^No, .*“pure sine”/);
    const table = (caption: RegExp): HTMLTableElement =>
      [...document.querySelectorAll('table')].find((one) => caption.test(one.caption?.textContent ?? ''))!;
    const harmonics = assay.result.voltage?.harmonics ?? [];
    const rows = [...table(/rising zero/).tBodies[0]!.rows];
    expect(rows.map(({ cells }) => Number(cells[2]?.dataset.sort))).toEqual(
      harmonics.map(({ percent }) => percent),
    );
    expect(table(/^Worst first/).tBodies[0]?.rows).toHaveLength(assay.result.findings.length);
    expect(document.body.textContent).toContain(assay.result.sha256);
  });

  test('is the same text for the same capture', () => {
    const page = (): string => capturePage(press, [waveSheet(assays.square!())], []);
    expect(page()).toBe(page());
  });
});

describe('the page of a bench test', () => {
  test.each(someOf(Object.keys(benches), 8))('%s: runs and fetches nothing but its own', (name) => {
    const bench = benches[name]!();
    const sheets = [
      ...bench.units.map((result): Evidence => ({ ...common, picture: 'sweep', told: [] as never, result })),
      ...(bench.units.length < 2
        ? []
        : [{ ...common, picture: 'comparison', told: [], result: bench } satisfies Evidence]),
    ].map(openedSheet);
    const page = benchPage(press, { program: '0.0.0', bench, sheets, files: [] });
    expect(pageFaults(page)).toEqual([]);
    const document = documentOf(page);
    const pictures = document.querySelectorAll('figure > svg');
    expect(pictures).toHaveLength(sheets.length);
    expect(document.querySelectorAll('main > section > h2').length).toBeGreaterThanOrEqual(
      bench.units.length,
    );
  });
});

describe('the gallery', () => {
  const listed = (name: string, evidence: Evidence) => ({
    ...{ name, evidence },
    beside: [{ name: name.replace('.svg', '.html'), what: 'page' }],
  });

  test('lists every look of a sheet, runs and fetches nothing but its own', () => {
    const sheets = [
      ...Object.entries(assays).map(([name, assay]) => listed(`${name}.svg`, waveSheet(assay()).evidence)),
      ...Object.entries(benches).flatMap(([name, bench]) => [
        listed(`${name}.svg`, { ...common, picture: 'comparison', told: [], result: bench() }),
        ...bench().units.map((result, i) =>
          listed(`${name}-${i}.svg`, { ...common, picture: 'sweep', told: [] as never, result }),
        ),
      ]),
    ];
    const page = galleryPage(press, { ...empty, sheets });
    expect(pageFaults(page)).toEqual([]);
    const document = documentOf(page);
    expect(document.querySelectorAll('.entry')).toHaveLength(sheets.length);
    expect(document.querySelectorAll('.entry svg path.wave').length).toBeGreaterThan(
      Object.keys(assays).length / 2,
    );
    expect(document.querySelector('.unread')).toBeNull();
  });

  test('every hostile text, file names among them, leaves it whole and inert', () => {
    const sheets = hostileTexts.map((text, i) =>
      listed(`${text.replace(/[\\/]/g, '').slice(0, 200)}${i}.svg`, sheetSaying(good, text).evidence),
    );
    const unread = hostileTexts.map((text) => ({ name: text, reason: text }));
    const page = galleryPage(press, { ...empty, sheets, unread });
    expect(pageFaults(page)).toEqual([]);
    expect(documentOf(page).querySelectorAll('.entry')).toHaveLength(hostileTexts.length);
    expect(documentOf(page).querySelectorAll('.unread li')).toHaveLength(hostileTexts.length);
  });

  test('carries what it is put in order by: the watts at the start of a load, and the figures', () => {
    const entries = (['300 W resistive', '1.2 kW', 'no load', 'a kettle', '5 windings'] as const).map(
      (load, i) =>
        listed(
          `${i}.svg`,
          waveSheet({
            ...assays.goodSine!(),
            result: {
              ...assays.goodSine!().result,
              loadSeen: { from: 'told', text: load, watts: wattsInWords(load) },
            },
          }).evidence,
        ),
    );
    const document = documentOf(galleryPage(press, { ...empty, sheets: entries }));
    const data = [...document.querySelectorAll<HTMLElement>('.entry')].map(({ dataset }) => dataset);
    expect(data.map(({ load }) => load)).toEqual(['300', '1200', '0', undefined, undefined]);
    expect(Number(data[0]?.rms)).toBe(assays.goodSine!().result.voltage?.rmsV.value);
    expect(data[0]?.outcome).toBe('holds');
  });

  test('a sheet whose data break off within is told by name, and the others are listed', () => {
    const { evidence } = waveSheet(assays.goodSine!());
    const broken = { ...evidence, result: { ...evidence.result, claims: null } } as unknown as Evidence;
    const document = documentOf(
      galleryPage(press, { ...empty, sheets: [listed('good.svg', evidence), listed('broken.svg', broken)] }),
    );
    expect([...document.querySelectorAll('.entry .file')].map(({ textContent }) => textContent)).toEqual([
      'good.svg',
    ]);
    expect(document.querySelector('.unread li')?.textContent).toMatch(
      /^broken\.svg: its data can’t be shown/,
    );
  });
});
