import { describe, expect, test } from 'vitest';
import { straightLine } from '../../../src/bench/sweep/droop.ts';
import reference from '../../reference/straightLine.json' with { type: 'json' };

// Values of scipy.optimize.curve_fit with exact derivatives; the script stands beside them. It decomposes a
// matrix whose condition is some hundred here, which leaves twelve of sixteen digits.
describe.each(Object.entries(reference))('%s', (_, { x, y, u, ...expected }) => {
  const line = straightLine(x, y, u);
  test.each(['intercept', 'slope', 'interceptVariance', 'slopeVariance', 'covariance'] as const)(
    '%s agrees with scipy',
    (key) => {
      expect(Math.abs(line[key] - expected[key])).toBeLessThanOrEqual(1e-11 * Math.abs(expected[key]));
    },
  );
  test('χ² and degrees of freedom', () => {
    expect(Math.abs(line.chiSquare - expected.chiSquare)).toBeLessThanOrEqual(
      1e-8 * expected.chiSquare + 1e-12,
    );
    expect(line.degreesOfFreedom).toBe(x.length - 2);
  });
});

test('a line through points that lie on it is found, whatever their weights', () => {
  const x = [0, 1, 4, 9];
  const line = straightLine(
    x,
    x.map((at) => 120 - 0.75 * at),
    [0.1, 3, 0.02, 0.5],
  );
  // Rounding of numbers of a hundred with sixteen digits, a few times over.
  expect(Math.abs(line.slope + 0.75)).toBeLessThan(1e-12);
  expect(Math.abs(line.intercept - 120)).toBeLessThan(1e-12);
  expect(line.chiSquare).toBeLessThan(1e-20);
});

test('what determines no line is a mistake of the caller', () => {
  expect(() => straightLine([1, 1], [2, 3], [1, 1])).toThrow(RangeError);
  expect(() => straightLine([1, 2], [2, 3], [1, 0])).toThrow(RangeError);
  expect(() => straightLine([1, 2], [2], [1, 1])).toThrow(RangeError);
});
