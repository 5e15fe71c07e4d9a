import { describe, expect, it } from 'vitest';
import { thdToOrder } from '../../../src/judge/limits/limitQuantities.ts';
import { exactly, figuresWith } from '../../assay/figuresWith.ts';

describe('thdToOrder', () => {
  it('leaves out the orders above, and keeps the doubt', () => {
    const figures = figuresWith(
      { thdPercent: exactly(13, 0.4) },
      120,
      new Map([
        [3, 3],
        [7, 4],
        [45, 12],
      ]),
    );
    expect(thdToOrder(figures, 40)).toEqual(exactly(5, 0.4)); // √(3² + 4²)
    expect(thdToOrder(figures, 50)).toEqual(exactly(13, 0.4)); // √(3² + 4² + 12²)
  });

  it('takes the figure as it stands where fewer orders were measured', () => {
    const figures = figuresWith({ thdPercent: exactly(2.5, 0.3), thdOrders: 20 });
    expect(thdToOrder(figures, 40)).toBe(figures.thdPercent);
  });

  it('passes on the reason where there is no THD', () => {
    const figures = figuresWith({ thdPercent: { value: null, reason: 'no period' } });
    expect(thdToOrder(figures, 40)).toEqual({ value: null, reason: 'no period' });
  });
});
