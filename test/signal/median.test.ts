import fc from 'fast-check';
import { expect, test } from 'vitest';
import { median } from '../../src/signal/statistics.ts';

// Not minus zero, which no order tells from zero.
const number = fc.double({ noNaN: true, min: -1e9, max: 1e9 }).map((value) => value + 0);

test('median(values) is the middle of the sorted values, or the mean of the two middle ones', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.array(number, { minLength: 1, maxLength: 2000 }),
        // As a coarse digitiser gives them: few values, each many times.
        fc.array(fc.constantFrom(0, 0.5, 1), { minLength: 1, maxLength: 2000 }),
      ),
      (values) => {
        const sorted = [...values].sort((a, b) => a - b);
        const [lower, upper] = [sorted[(sorted.length - 1) >> 1]!, sorted[sorted.length >> 1]!];
        expect(median(values)).toBe((lower + upper) / 2);
      },
    ),
  );
});

test('the values stay as they were', () => {
  const values = Float64Array.of(3, 1, 2, 5);
  expect(median(values)).toBe(2.5);
  expect([...values]).toEqual([3, 1, 2, 5]);
});

test('no values have no median', () => {
  expect(() => median([])).toThrow(RangeError);
});
