import { expect, test } from 'vitest';
import { memoizeBySize } from '../../src/signal/spectrum.ts';

test('keptBySize(make) makes a table once, and forgets the one that nobody asked for the longest', () => {
  const made: number[] = [];
  const tableOf = memoizeBySize((size) => {
    made.push(size);
    return { size };
  }, 2);
  expect(tableOf(8)).toBe(tableOf(8));
  tableOf(16);
  tableOf(8);
  tableOf(32);
  expect(made).toEqual([8, 16, 32]);
  expect(tableOf(8).size).toBe(8);
  expect(made).toEqual([8, 16, 32]);
  tableOf(16);
  expect(made).toEqual([8, 16, 32, 16]);
});
