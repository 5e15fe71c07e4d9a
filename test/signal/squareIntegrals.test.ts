import fc from 'fast-check';
import { expect, test } from 'vitest';
import { squareIntegrals } from '../../src/signal/squareIntegrals.ts';

test('a constant: the square times the length, wherever the ends are', () => {
  const { integrals } = squareIntegrals(Float64Array.of(2, 2, 2, 2), Float64Array.of(0, 0.25, 2.75, 3));
  expect(Array.from(integrals)).toEqual([1, 10, 1]);
});

test('stretches add up to the whole', () => {
  const samples = Float64Array.from({ length: 40 }, (_, n) => Math.sin(n));
  const whole = squareIntegrals(samples, Float64Array.of(0, 39)).integrals[0]!;
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 39, noNaN: true }), { maxLength: 20 }), (cuts) => {
      const positions = Float64Array.from([0, ...cuts.sort((a, b) => a - b), 39]);
      const sum = squareIntegrals(samples, positions).integrals.reduce((a, b) => a + b, 0);
      // Rounding of at most sixty additions.
      expect(Math.abs(sum - whole)).toBeLessThan(1e-12);
    }),
  );
});

test('a cycle of a sine that starts between samples', () => {
  const samples = Float64Array.from({ length: 300 }, (_, n) => Math.sin((2 * Math.PI * (n - 20.3)) / 200));
  const { integrals } = squareIntegrals(samples, Float64Array.of(20.3, 220.3));
  // v² is a cosine of twice the frequency: over its whole period the trapezoid rule leaves the two ends' share,
  // (ωh)² · h, of 100.
  expect(Math.abs(integrals[0]! - 100)).toBeLessThan((2 * Math.PI) ** 2 / 200 ** 2);
});

test('what is missing is counted, and bridged by a straight line in v', () => {
  const samples = Float64Array.of(0, 1, Number.NaN, 3, Number.NaN);
  const { integrals, missing } = squareIntegrals(samples, Float64Array.of(0, 3, 4));
  expect(Array.from(missing)).toEqual([1, 1]);
  // 0, 1, 4, 9 and nothing after the last present sample.
  expect(Array.from(integrals)).toEqual([9.5, 4.5]);
});
