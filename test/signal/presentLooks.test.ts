import { expect, test } from 'vitest';
import { sampleFinite } from '../../src/signal/strayValues.ts';

test('presentLooks(samples, looks) takes samples evenly apart, and leaves out what is missing', () => {
  const samples = Float64Array.from({ length: 10 }, (_, n) => (n === 4 ? Number.NaN : n));
  expect([...sampleFinite(samples, 5)]).toEqual([0, 2, 6, 8]);
  expect([...sampleFinite(samples, 6)]).toEqual([0, 1, 2, 3, 5, 6, 7, 8, 9]);
  expect(sampleFinite(new Float64Array(3).fill(Number.NaN), 9).length).toBe(0);
});
