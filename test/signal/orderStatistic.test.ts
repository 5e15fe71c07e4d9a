import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderStatistic } from '../../src/signal/statistics.ts';

test('orderStatistic(values, place) is what stands there when they are sorted, and parts them', () => {
  const values = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 2000 });
  fc.assert(
    fc.property(values, fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), (given, share) => {
      const place = Math.floor(share * given.length);
      const parted = Float64Array.from(given);
      const found = orderStatistic(parted, place);
      expect(found).toBe(given.toSorted((a, b) => a - b)[place]);
      expect(parted.subarray(0, place).every((value) => value <= found)).toBe(true);
      expect(parted.subarray(place).every((value) => value >= found)).toBe(true);
    }),
  );
});
