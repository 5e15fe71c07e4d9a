import { describe, expect, test } from 'vitest';
import { differenceComponents, differenceOf, WIDEST_SUM } from '../../../src/bench/compare/differenceOf.ts';
import { scatter, within } from '../../../src/measure/doubt/component.ts';
import { worded } from '../../../src/words/worded.ts';

const alone = { components: null, sameInstrument: false };
const figure = (value: number, uncertainty: number) => ({ value, uncertainty });

test('without budgets the uncertainties add in squares, widened for rectangles', () => {
  const { difference, significant } = differenceOf(figure(120, 3), figure(127, 4), alone);
  expect(difference).toEqual({ value: 7, uncertainty: WIDEST_SUM * 5 });
  expect(significant).toBe(true);
  expect(differenceOf(figure(120, 3), figure(125, 4), alone).significant).toBe(false);
});

test('the widening is that of two equal rectangles: their difference is a triangle', () => {
  // |x| < 1 − √(1 − p) of its half base holds the share p of a triangle; a rectangle's own interval is p of its half.
  const p = 0.9545;
  const triangle = 2 * (1 - Math.sqrt(1 - p));
  expect(Math.abs(triangle / (Math.SQRT2 * p) - WIDEST_SUM)).toBeLessThan(0.005);
});

test('one gain in both counts in proportion to the difference, noise of both counts in full', () => {
  // c = value / 100 a per cent of gain; noise of 0.3 and 0.4 V.
  const a = [within('vertical gain', 3, '%', 1.2), scatter('noise', 0.3, 'V')];
  const b = [within('vertical gain', 3, '%', 1.1), scatter('noise', 0.4, 'V')];
  const { budget } = differenceOf(figure(120, 4), figure(110, 4), {
    components: [a, b],
    sameInstrument: true,
  });
  // JCGM 100:2008, 5.2.2: u² = (0.1 · 3/√3)² + 0.3² + 0.4².
  const closed = Math.hypot(0.1 * Math.sqrt(3), 0.3, 0.4);
  expect(Math.abs(budget!.combinedStandardUncertainty / closed - 1)).toBeLessThan(1e-12);
  const two = differenceOf(figure(120, 4), figure(110, 4), { components: [a, b], sameInstrument: false });
  const apart = Math.hypot(1.2 * Math.sqrt(3), 1.1 * Math.sqrt(3), 0.3, 0.4);
  expect(Math.abs(two.budget!.combinedStandardUncertainty / apart - 1)).toBeLessThan(1e-12);
});

test('an equal influence of one instrument leaves nothing', () => {
  const one = [within('probe ratio', 2, '%', 1.2)];
  const { uncertainty } = differenceOf(figure(120, 2), figure(120, 2), {
    components: [one, one],
    sameInstrument: true,
  }).difference as { uncertainty: number };
  expect(uncertainty).toBe(0);
  expect(differenceComponents(one, one, false)).toHaveLength(2);
});

describe('bounds and missing figures', () => {
  test('a bound is anything from nothing up to it', () => {
    const bound = { ...figure(0.2, 0.25), notAbove: 0.4 };
    const found = differenceOf(bound, figure(2, 0.3), alone);
    expect(found.difference).toEqual({ value: 1.8, uncertainty: 0.5 });
    expect(worded(found)).toMatchObject({ significant: true, reason: 'A: known only as a bound' });
    expect(differenceOf(bound, bound, alone).significant).toBe(false);
  });

  test('a missing figure says why', () => {
    const missing = { value: null, reason: 'nothing repeats' };
    expect(worded(differenceOf(figure(1, 1), missing, alone))).toMatchObject({
      significant: null,
      difference: { value: null, reason: 'B: nothing repeats' },
    });
  });
});
