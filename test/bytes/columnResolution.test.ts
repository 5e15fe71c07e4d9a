import { expect, test } from 'vitest';
import { columnResolution } from '../../src/bytes/columnResolution.ts';
import { locateTable } from '../../src/bytes/locateTable.ts';

test('a damaged cell that no instrument reads does not pass for the size of its column', () => {
  const rows = Array.from({ length: 64 }, (_, i) => `${(i / 100).toFixed(2)},${i % 7}`);
  rows[20] = '-1e308,3';
  const text = `s,V\n${rows.join('\n')}\n`;
  // The last digit printed is a hundredth.
  expect(columnResolution(text, locateTable(text), 0)).toBe(0.01);
});
