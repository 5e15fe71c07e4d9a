import { expect, test } from 'vitest';
import type { HeadLine } from '../../../src/bytes/table.ts';
import { inventedNotice } from '../../../src/capture/head/inventedNotice.ts';

const line = (text: string): HeadLine => ({ line: 1, text, cells: [text] }) as unknown as HeadLine;

test.each(['Invented demonstration data, no real inverter', 'All of this is invented.'])(
  '“%s” says so',
  (text) => {
    expect(inventedNotice([line(text)]).map(({ code }) => code)).toEqual(['data.invented']);
  },
);

test.each(['File: invented-unit.csv', 'D:\\invented\\a.csv', 'saved as invented.csv', 'inventedness'])(
  '“%s” is a name',
  (text) => {
    expect(inventedNotice([line(text)])).toEqual([]);
  },
);
