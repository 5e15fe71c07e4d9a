import { expect, test } from 'vitest';
import { dataTable, figureTable, fileLink, html, Markup } from '../../../src/publish/html/html.ts';
import { hostileTexts } from '../../fixtures/hostileText.ts';

test('values are escaped, markup stands as it is, null and false are nothing, lists are joined', () => {
  expect(html`<b title="${'"<&>'}">${[1, new Markup('<i>'), null, false, 'a<b']}</b>`.text).toBe(
    '<b title="&quot;&lt;&amp;&gt;">1<i>a&lt;b</b>',
  );
});

test('the address of a file stays in its folder and means the same name again', () => {
  for (const text of hostileTexts) {
    const name = text.replace(/[\\/]/g, '').replace(/\p{Cs}/gu, '');
    const url = new URL(fileLink(name), 'file:///folder/page.html');
    expect(url.protocol).toBe('file:');
    expect(decodeURIComponent(url.pathname)).toBe(`/folder/${name}`);
    expect(url.search + url.hash).toBe('');
  }
});

test.each(['..', '.', '../x.svg', 'a/b.svg', 'a\\b.svg'])('%s is no file of the folder', (name) => {
  expect(() => fileLink(name)).toThrow(RangeError);
});

test('a cell is sorted by its number, and says none where it has none', () => {
  const { text } = dataTable({
    caption: 'c',
    columns: [{ heading: 'name' }, { heading: 'n', isNumber: true }],
    rows: [
      ['a', { shown: '−1.0', sort: -1 }],
      ['b', { shown: '–', sort: null }],
    ],
  });
  expect(text).toContain('<td role="cell" data-label="n" class="number" data-sort="-1">−1.0</td>');
  expect(text).toContain('data-sort="">–</td>');
  expect(text).toContain('<th role="rowheader" scope="row" data-label="name">a</th>');
});

test('a figure stands with its uncertainty, as a bound, or with why there is none', () => {
  const { text } = figureTable('Figures', [
    ['RMS', { value: 119.8234, uncertainty: 0.0931 }, 'V'],
    ['THD', { value: 0.2, uncertainty: 0.2, notAbove: 0.39 }, '%'],
    ['crest', { value: null, reason: 'no <period>' }, ''],
  ]);
  expect(text).toContain('data-sort="119.8234">119.82<');
  expect(text).toContain('data-sort="0.0931">0.09<');
  expect(text).toContain('<small>not above</small> 0.39<');
  expect(text).toContain('crest <small>not measurable: no &lt;period&gt;</small>');
});
