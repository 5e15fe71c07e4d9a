import { expect, test } from 'vitest';
import { inventedNotice } from '../../../src/read/head/readHead.ts';
import type { HeadLine } from '../../../src/read/table/table.ts';

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
