import fc from 'fast-check';
import { expect, test } from 'vitest';
import { axisTicks } from '../../../src/draw/panels/axes.ts';

test.each([
  [0, 10, 5, [0, 2, 4, 6, 8, 10], 0],
  [-0.12, 0.31, 5, [-0.1, 0, 0.1, 0.2, 0.3], 1],
  [0, 1000, 2, [0, 500, 1000], -2],
])('axisTicks(%d, %d, %d) are round values', (from, to, most, values, decimals) => {
  const ticks = axisTicks(from, to, most);
  expect(ticks.values.map((value) => Number(value.toFixed(6)))).toEqual(values.map((value) => value));
  expect(ticks.decimals + 0).toBe(decimals + 0);
});

test('an axis without length has one tick', () => {
  expect(axisTicks(3, 3, 5).values).toEqual([3]);
});

test('ticks lie within, evenly, not many more than asked for, and their texts differ', () => {
  const end = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(
      end,
      fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
      fc.integer({ min: 2, max: 12 }),
      (from, length, most) => {
        const { values, decimals } = axisTicks(from, from + length, most);
        const step = values.length > 1 ? values[1]! - values[0]! : 0;
        // What 64 bits can't tell apart so far from zero.
        const slack = 1e-6 * length + 1e-9 * Math.abs(from);
        // The step is the nearest of 1, 2, 5, 10 by ratio, at worst √2 too small.
        expect(values.length).toBeLessThanOrEqual(Math.SQRT2 * most + 1 + 1e-9);
        for (const [i, value] of values.entries()) {
          expect(value).toBeGreaterThanOrEqual(from - slack);
          expect(value).toBeLessThanOrEqual(from + length + slack);
          expect(Math.abs(value - (values[0]! + i * step))).toBeLessThan(5e-7);
        }
        const shown = Math.max(0, decimals);
        if (shown <= 9) expect(new Set(values.map((value) => value.toFixed(shown))).size).toBe(values.length);
      },
    ),
  );
});
