import { expect, test } from 'vitest';
import { locateTable } from '../../../src/read/table/locateTable.ts';
import { columnDigits } from '../../../src/read/text/columnDigits.ts';

test('a damaged cell that no instrument reads does not pass for the size of its column', () => {
  const rows = Array.from({ length: 64 }, (_, i) => `${(i / 100).toFixed(2)},${i % 7}`);
  rows[20] = '-1e308,3';
  const text = `s,V\n${rows.join('\n')}\n`;
  // The last digit printed is a hundredth.
  expect(columnDigits(text, locateTable(text), 0).resolution).toBe(0.01);
});

test('the last digit of large numbers is told apart from that of small ones, which an exponent makes finer', () => {
  const rows = Array.from({ length: 64 }, (_, i) => `${((i - 20) * 1.25e-3).toExponential(2)},${i % 7}`);
  const text = `s,V\n${rows.join('\n')}\n`;
  // From 5.38E-2 down to 1.25E-3: three digits, of which the last is worth 1E-4, among small ones 1E-5.
  expect(columnDigits(text, locateTable(text), 0)).toEqual({
    significant: 3,
    finest: 1e-5,
    resolution: 1e-4,
  });
});
