import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import { compareCaptures } from '../../../src/bench/compare/compareCaptures.ts';
import { differenceTables } from '../../../src/publish/html/comparisonTables.ts';
import { worded } from '../../../src/words/worded.ts';
import { assays } from '../../fixtures/assays.ts';

const [good, flat] = [assays.goodSine!(), assays.flatTop!()];
const compared = worded(compareCaptures(good, flat, { sameInstrument: true }));

/** The rows of a table by the start of its caption, a text a cell. */
function rowsOf(document: Document, caption: string): string[][] {
  const table = [...document.querySelectorAll('table')].find(({ caption: one }) =>
    one?.textContent?.startsWith(caption),
  );
  return [...(table?.tBodies[0]?.rows ?? [])].map(({ cells }) =>
    [...cells].map((cell) => cell.textContent ?? ''),
  );
}

test('every difference stands in one row, the figures that are asked about first before the others', () => {
  const { document } = new JSDOM(differenceTables(compared).text).window;
  const [main, others] = [rowsOf(document, 'Main figures'), rowsOf(document, 'Other figures')];
  expect([...main, ...others].map(([quantity]) => quantity).sort()).toEqual(
    compared.differences.map(({ quantity }) => quantity).sort(),
  );
  expect(main.map(([quantity]) => quantity)).toContain('THD');
  expect(others.map(([quantity]) => quantity)).toContain('peak');
  const thd = main.find(([quantity]) => quantity === 'THD');
  expect(thd?.[3]).toMatch(/^\+\d.* ± .*%$/);
  expect(thd?.[4]).toBe('differs');
  expect(document.body.textContent).toContain('Taken with one instrument, as told');
});

test('claims that both were held against stand side by side, words from outside are words', () => {
  const text = '<b onclick="x">THD < 3 %';
  const { document } = new JSDOM(
    differenceTables({
      ...compared,
      claims: [{ text, a: 'pass', b: 'fail' }],
      notices: [{ code: 'compare.load', message: 'They were taken at different loads, <i>0</i> and 1.' }],
    }).text,
  ).window;
  expect(rowsOf(document, 'Claims')).toEqual([[text, 'holds', 'fails']]);
  expect(document.querySelector('li')?.textContent).toContain('<i>0</i>');
});
