import { describe, expect, it } from 'vitest';
import { percentOfNominal } from '../../../src/judge/limits/limitTable.ts';
import { exactly } from '../../assay/figuresWith.ts';

describe('percentOfNominal', () => {
  it('scales by the fundamental over nominal and joins both doubts at right angles', () => {
    // 6 % of 100 V is 5 % of 120 V; doubts 0.6 · 100 and 6 · 12 → √(60² + 72²) / 120.
    const found = percentOfNominal(exactly(6, 0.6), exactly(100, 12), 120);
    expect(found.value).toBe(5);
    expect(
      Math.abs((found as { uncertainty: number }).uncertainty - Math.sqrt(3600 + 5184) / 120),
    ).toBeLessThan(
      1e-15, // rounding
    );
  });
});
