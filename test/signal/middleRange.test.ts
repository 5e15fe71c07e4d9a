import { expect, test } from 'vitest';
import { middleRange } from '../../src/signal/recordParts.ts';

test('the middle of a record, and how far its centre stands behind the record’s', () => {
  expect(middleRange(9, 20)).toEqual({ from: 0, to: 9, apart: 0 });
  for (const [length, longest] of [
    [9, 5],
    [9, 4],
    [10, 5],
    [10, 4],
  ] as const) {
    const { from, to, apart } = middleRange(length, longest);
    expect(to - from).toBe(longest);
    // The centre of samples from ≤ n < to is the mean of the first and the last.
    expect(apart).toBe((from + to - 1) / 2 - (length - 1) / 2);
    expect(Math.abs(apart)).toBeLessThanOrEqual(0.5);
  }
});
