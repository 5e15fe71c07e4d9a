import { expect, test } from 'vitest';
import { openBrowser } from './openBrowser.ts';
import { textFaults } from './textBoxes.ts';

const sheet = (texts: string): string => `<svg viewBox="0 0 1600 900" width="1600">${texts}</svg>`;
const text = (x: number, y: number, words: string): string =>
  `<text x="${x}" y="${y}" font-size="20" textLength="100" lengthAdjust="spacingAndGlyphs">${words}</text>`;

test('texts that run into each other or off the page are found, neighbours are not', async () => {
  const page = await (await openBrowser()).newPage();
  expect(await textFaults(page, sheet(text(100, 100, 'one') + text(150, 90, 'two')))).toMatchObject({
    overlaps: ['“one” and “two”'],
    outside: [],
  });
  // The next line, the next column, the page's edge.
  const near =
    text(100, 100, 'one') + text(100, 120, 'two') + text(200, 100, 'three') + text(1498, 895, 'four');
  expect(await textFaults(page, sheet(near))).toEqual({ overlaps: [], outside: [], count: 4 });
  expect((await textFaults(page, sheet(text(1501, 500, 'five') + text(5, 10, 'six')))).outside).toEqual([
    'five',
    'six',
  ]);
});
