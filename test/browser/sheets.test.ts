import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { assaysOf, benchSheets, captureFiles, overlaySheet, sheetsOf } from './everySheet.ts';
import { openBrowser } from './openBrowser.ts';
import { textFaults } from './textBoxes.ts';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage({ viewport: { width: 1600, height: 900 } });
});

const clean = { overlaps: [], outside: [] };
async function faultsOf(svg: string): Promise<object> {
  const { count, ...faults } = await textFaults(page, svg);
  expect(count).toBeGreaterThan(6);
  return faults;
}

const names: Readonly<Record<string, string>> = {
  Greek: 'Έξοδος εναλλασσόμενου',
  Cyrillic: 'Напряжение на выходе',
  Chinese: '交流输出电压通道一',
  Japanese: '交流出力チャンネル１',
  Arabic: 'جهد الخرج المتردد',
  Hindi: 'एसी आउटपुट वोल्टेज',
  Thai: 'แรงดันขาออกกระแสสลับ',
  emoji: '⚡️🔌👩‍🔧🏳️‍🌈',
  'combining marks': `a${'\u0301\u0323'.repeat(200)}b`,
  'a name of 5,000 letters without a blank': 'W'.repeat(5000),
  'a name of 5,000 narrow letters': 'il'.repeat(2500),
  'words without end': 'a long tale '.repeat(400),
};

describe('no two texts overlap and none leaves the page', () => {
  test.each(captureFiles)('%s as it is, with claims, load and label', async (file) => {
    const claims = [
      { text: 'pure sine', quantity: 'waveform', kind: 'pure sine' },
      { text: '120 V ±5 %', quantity: 'rmsV', limit: { min: 114, max: 126 }, target: 120 },
      { text: 'THD < 3 %', quantity: 'thdPercent', limit: { max: 3 }, target: null },
      { text: 'crest 1.38..1.45', quantity: 'crestFactor', limit: { min: 1.38, max: 1.45 }, target: null },
    ] as const;
    const told = { claims, label: 'Inverter A (red case)', load: '300 W resistive' };
    for (const options of [{}, told]) {
      for (const assay of assaysOf(file, options)) {
        for (const svg of sheetsOf(assay)) expect(await faultsOf(svg)).toEqual(clean);
      }
    }
  });

  test.each(captureFiles)('%s over the first', async (file) => {
    const svg = overlaySheet(assaysOf(captureFiles[0]!)[0]!, assaysOf(file)[0]!);
    expect(await faultsOf(svg)).toEqual(clean);
  });

  test.each(
    Object.entries(names).map(([kind, name], i) => ({
      kind,
      name,
      // Each name on two of the captures, so that every capture has one or two of them.
      files: captureFiles.filter((_, k) => (i + 3 * k) % Math.ceil(captureFiles.length / 2) === 0),
    })),
  )('$kind as channel, label, load and file', async ({ name, files }) => {
    for (const file of files) {
      const [assay] = assaysOf(file);
      const texts = { file: `${name}.csv`, channel: name, label: name, load: name };
      for (const svg of [...sheetsOf(assay!, texts), overlaySheet(assay!, assay!, texts)])
        expect({ file, ...(await faultsOf(svg)) }).toEqual({ file, ...clean });
    }
  });

  test.each([['as they are', undefined], ...Object.entries(names)])(
    'sweeps and comparison, units named %s',
    async (_, name) => {
      for (const svg of benchSheets(name)) expect(await faultsOf(svg)).toEqual(clean);
    },
  );
});

describe('hostile texts leave every sheet well-formed and inert', () => {
  const hostile: Readonly<Record<string, string>> = {
    markup: '"><script>alert(1)</script><image href="http://127.0.0.1:9/x" onerror="alert(2)"/>',
    'markup that closes': '</text></svg><script>alert(1)</script><svg onload="alert(2)">',
    'evidence that closes': '</metadata><script>alert(1)</script>',
    entities: '&lt;b&gt; &#x3c;script&#x3e; &bogus; &amp;amp;',
    CDATA: ']]><!-- --><![CDATA[',
    'control characters': `a${String.fromCharCode(...Array(32).keys(), 127, 155)}b`,
    'right-to-left marks': '\u202Egpj.exe\u202C\u2066\u200F\uFEFF',
    'lone surrogates': '\uD800 \uDC00',
    'formula starts': '=HYPERLINK("http://127.0.0.1:9/","x")',
    '5,000 characters': '<a href="javascript:alert(1)">x</a>'.repeat(143),
  };

  test.each(Object.entries(hostile))('%s', async (_, text) => {
    const watched = await browser.newPage();
    const heard: string[] = [];
    watched.on('dialog', (dialog) => {
      heard.push(`dialog ${dialog.message()}`);
      void dialog.dismiss();
    });
    watched.on('pageerror', (error) => heard.push(`error ${error.message}`));
    watched.on('request', (request) => heard.push(`request ${request.url()}`));
    const texts = { file: `${text}.csv`, channel: text, label: text, load: text };
    const sheets = [
      ...sheetsOf(assaysOf('a-red-450w-current.csv')[0]!, texts),
      ...sheetsOf(assaysOf('c-green-transfer.csv')[0]!, texts),
      overlaySheet(assaysOf('a-red-000w.csv')[0]!, assaysOf('b-blue-300w.csv')[0]!, texts),
      ...benchSheets(text),
    ];
    for (const svg of sheets) {
      const wrong = await watched.evaluate((source) => {
        const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
        const known = [
          'svg',
          'title',
          'desc',
          'metadata',
          'style',
          'g',
          'rect',
          'path',
          'line',
          'circle',
          'text',
          'tspan',
        ];
        const elements = [...parsed.querySelectorAll('*')];
        return [
          ...elements.filter(({ localName }) => !known.includes(localName)).map(({ localName }) => localName),
          ...elements.flatMap(({ attributes }) =>
            [...attributes].filter(({ name }) => /^on|href/i.test(name)).map(({ name }) => name),
          ),
        ];
      }, svg);
      expect(wrong).toEqual([]);
      await watched.setContent(`<!doctype html><meta charset="utf-8"><body>${svg}</body>`);
      await watched.waitForTimeout(20);
    }
    expect(heard).toEqual([]);
    await watched.close();
  });
});
