import { JSDOM } from 'jsdom';
import markdownIt from 'markdown-it';
import { describe, expect, test } from 'vitest';
import { benchMarkdown } from '../../../src/publish/markdown/benchMarkdown.ts';
import { captureMarkdown } from '../../../src/publish/markdown/captureMarkdown.ts';
import { markdownText } from '../../../src/publish/markdown/markdown.ts';
import { cleanText } from '../../../src/words/text.ts';
import { assays } from '../../fixtures/assays.ts';
import { benches } from '../../fixtures/benches.ts';
import { hostileTexts } from '../../fixtures/hostileText.ts';
import { sheetSaying, waveSheet } from '../../fixtures/openedSheets.ts';
import { someOf } from '../../samples.ts';

// As free with its reader as a renderer can be: raw HTML, and addresses turned into links.
const renderer = markdownIt({ html: true, linkify: true });
const rendered = (text: string): Document => new JSDOM(renderer.render(text)).window.document;
const elements = (document: Document): string[] =>
  [...document.querySelectorAll('body *')].map(({ localName }) => localName);

test('any text reads as it is and is nothing but text, at the start of a line and in a cell', () => {
  for (const text of someOf(hostileTexts)) {
    const line = rendered(markdownText(text));
    expect(elements(line)).toEqual(cleanText(text) === '' ? [] : ['p']);
    expect(line.body.textContent?.trim()).toBe(cleanText(text));
    const table = rendered(`| a | b |\n| --- | --- |\n| ${markdownText(text)} | c |`);
    expect([...table.querySelectorAll('td')].map(({ textContent }) => textContent)).toEqual([
      cleanText(text),
      'c',
    ]);
    expect(table.querySelectorAll('td *')).toHaveLength(0);
  }
});

test.each(['115.3 V', '1.44 ± 0.03', 'kettle_300w.csv', '“pure sine” fails (2.1 %)', '60 Hz'])(
  '%s needs no escape',
  (text) => {
    expect(markdownText(text)).toBe(text);
  },
);

describe('a capture', () => {
  test('is an answer, a picture, tables, its digest and the cautions', () => {
    const { evidence } = waveSheet(assays.flatTop!());
    const document = rendered(captureMarkdown(evidence, 'flat top (1).svg'));
    expect(document.querySelector('p strong')?.textContent).toMatch(/^No, /);
    expect(document.querySelector('img')?.getAttribute('src')).toBe('./flat%20top%20%281%29.svg');
    const [figures, claims] = document.querySelectorAll('table');
    expect(figures?.textContent).toMatch(/RMS voltage\s+\d+\s±\s\d\sV/);
    expect(claims?.querySelectorAll('tbody tr')).toHaveLength(4);
    expect(document.querySelector('code')?.textContent).toBe(evidence.result.sha256);
    expect(document.querySelector('blockquote')?.textContent).toContain('not a certificate');
  });

  test('keeps its shape whatever is said in it', () => {
    const shape = (text: string): string[] =>
      elements(rendered(captureMarkdown(sheetSaying(assays.goodSine!(), text).evidence, 'a.svg')));
    const expected = shape('plain');
    for (const text of someOf(hostileTexts)) expect(shape(text)).toEqual(expected);
  });
});

test.each(someOf(Object.keys(benches)))('a bench test, %s, is text, tables and pictures alone', (name) => {
  const bench = benches[name]!();
  const sweeps = new Map(bench.units.map((unit, i) => [unit.name, `sweep-${i}.svg`]));
  const document = rendered(benchMarkdown({ program: '0.0.0', bench, sweeps, comparison: 'comparison.svg' }));
  const allowed = /^(p|strong|a|img|table|thead|tbody|tr|th|td|ul|li|code|blockquote)$/;
  expect(elements(document).filter((element) => !allowed.test(element))).toEqual([]);
  expect(
    [...document.querySelectorAll('a')].filter(
      (a) => !/^\.\/[\w-]+\.svg$/.test(a.getAttribute('href') ?? ''),
    ),
  ).toEqual([]);
});
