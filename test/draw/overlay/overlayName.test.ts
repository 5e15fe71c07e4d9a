import { expect, test } from 'vitest';
import { overlayName } from '../../../src/draw/overlay/drawOverlaySheet.ts';

test.each([
  [['a.csv', 'b.csv'], 'compare-a-b'],
  [['captures/a-300w.csv', 'C:\\scope\\b 300 W.CSV'], 'compare-a-300w-b_300_W'],
  [['.hidden', 'two.dots.csv'], 'compare-.hidden-two.dots'],
  [['Ünit/ß.csv', 'a/b:c?.csv'], 'compare-ß-b_c_'],
] as const)('%j are %s', (files, name) => {
  expect(overlayName(files)).toBe(name);
});

test('names that go on and on are cut', () => {
  expect(overlayName([`${'a'.repeat(300)}.csv`, 'b.csv'])).toBe(`compare-${'a'.repeat(80)}-b`);
});
