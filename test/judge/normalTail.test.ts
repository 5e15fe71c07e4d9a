import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalTail } from '../../src/judge/decide.ts';

/** x, Q(x): printed by normalTail.py (scipy 1.17.1 and mpmath 1.3.0, which agree). */
const reference: readonly (readonly [number, number])[] = [
  [-8, 0.9999999999999993],
  [-3, 0.9986501019683699],
  [-2.5, 0.9937903346742238],
  [-1.4, 0.9192433407662289],
  [-0.1, 0.539827837277029],
  [0, 0.5],
  [1e-9, 0.49999999960105773],
  [0.5, 0.3085375387259869],
  [1, 0.15865525393145705],
  [1.4, 0.08075665923377107],
  [2, 0.02275013194817921],
  [2.4999, 0.00621141837494459],
  [2.5, 0.006209665325776135],
  [2.6, 0.004661188023718749],
  [3, 0.0013498980316300946],
  [4, 3.1671241833119924e-5],
  [6, 9.86587645037698e-10],
  [10, 7.619853024160525e-24],
  [20, 2.7536241186062337e-89],
  [36, 4.182624065797283e-284],
];

describe('normalTail', () => {
  it.each(reference)('at %s agrees with an independent library to the stated bound', (x, expected) => {
    const found = normalTail(x);
    expect(Math.abs(found - expected)).toBeLessThan(5e-16);
    expect(Math.abs(found / expected - 1)).toBeLessThan(1e-13);
  });

  it('takes infinities and refuses NaN', () => {
    expect(normalTail(Number.POSITIVE_INFINITY)).toBe(0);
    expect(normalTail(Number.NEGATIVE_INFINITY)).toBe(1);
    expect(() => normalTail(Number.NaN)).toThrow(RangeError);
  });

  it('never rises, across the seam of its two methods too', () => {
    const place = fc.oneof(
      fc.double({ min: -10, max: 40, noNaN: true }),
      fc.double({ min: 2.49, max: 2.51, noNaN: true }),
    );
    fc.assert(
      fc.property(place, fc.double({ min: 1e-6, max: 5, noNaN: true }), (x, step) => {
        expect(normalTail(x + step)).toBeLessThanOrEqual(normalTail(x));
      }),
    );
  });

  it('and its mirror image make one', () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (x) => {
        // Two figures of absolute error 5e-16 each.
        expect(Math.abs(normalTail(x) + normalTail(-x) - 1)).toBeLessThan(1e-15);
      }),
    );
  });
});
