import fc from 'fast-check';
import { expect, test } from 'vitest';
import { finestScale, scaleAtLeast } from '../../../src/measure/digitiser/digitiserAdvice.ts';

test('scaleAtLeast(value) climbs the row 1, 2, 5, 10', () => {
  for (const [value, scale] of [
    [0.03, 0.05],
    [0.5, 0.5],
    [0.51, 1],
    [1, 1],
    [1.1, 2],
    [4, 5],
    [5.1, 10],
    [99, 100],
    [120, 200],
  ] as const) {
    expect(scaleAtLeast(value)).toBe(scale);
  }
});

test('finestScale(span): 36 to 90 % of eight divisions, whatever the span', () => {
  expect(finestScale(650)).toBe(100);
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), (span) => {
      const fill = span / (8 * finestScale(span));
      expect(fill).toBeLessThan(0.9 + 1e-8);
      expect(fill).toBeGreaterThan(0.36 - 1e-8);
    }),
  );
});
