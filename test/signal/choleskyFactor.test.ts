import { expect, test } from 'vitest';
import { choleskyFactor } from '../../src/signal/choleskyFactor.ts';
import reference from '../reference/signalValues.json' with { type: 'json' };

test('solve(b) and inverseDiagonal() equal scipy.linalg.solve and inv', () => {
  const { matrix, right, x, inverseDiagonal } = reference.solve;
  const factor = choleskyFactor({ size: 5, values: Float64Array.from(matrix) })!;
  // A well-conditioned 5 × 5: rounding under 1e-14 of values near one.
  factor.solve(Float64Array.from(right)).forEach((value, i) => {
    expect(Math.abs(value - x[i]!)).toBeLessThan(1e-14);
  });
  factor.inverseDiagonal().forEach((value, i) => {
    expect(Math.abs(value - inverseDiagonal[i]!)).toBeLessThan(1e-14);
  });
});

test('a matrix that is not positive definite has no factor', () => {
  expect(choleskyFactor({ size: 2, values: Float64Array.of(1, 1, 1, 1) })).toBeNull();
  expect(choleskyFactor({ size: 2, values: Float64Array.of(1, 2, 2, 1) })).toBeNull();
});
