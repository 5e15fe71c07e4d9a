import fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldedMean, foldedMedian } from '../../src/signal/foldedMean.ts';
import { storedResidual } from '../../src/signal/residual.ts';
import { wholeCycleWeights } from '../../src/signal/wholeCycleWeights.ts';

function allWeights(length: number, period: number): Float64Array {
  const { at } = wholeCycleWeights(length, period);
  return Float64Array.from({ length }, (_, n) => at(n));
}

test('wholeCycleWeights(length, period) are positive, symmetric and sum to one', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 8, max: 300, noNaN: true }),
      fc.double({ min: 1.01, max: 9, noNaN: true }),
      (period, cycles) => {
        const length = Math.ceil(period * cycles);
        const weights = allWeights(length, period);
        expect(Math.min(...weights)).toBeGreaterThan(0);
        expect(Math.abs(weights.reduce((sum, w) => sum + w, 0) - 1)).toBeLessThan(1e-12);
        const squares = weights.reduce((sum, w) => sum + w * w, 0);
        expect(Math.abs(wholeCycleWeights(length, period).averagedSamples * squares - 1)).toBeLessThan(5e-10);
        for (let n = 0; n < length; n++) expect(weights[n]).toBe(weights[length - 1 - n]);
      },
    ),
  );
});

test('the weighted mean of a wave of that period is its mean, whatever the surplus and the phase', () => {
  for (const [period, cycles] of [
    [200.3, 1.4],
    [333.33, 2.97],
    [57.1, 6.5],
  ] as const) {
    const length = Math.round(period * cycles);
    const weights = allWeights(length, period);
    for (const phase of [0, 1, 2.5]) {
      let mean = 0;
      for (let n = 0; n < length; n++)
        mean += weights[n]! * Math.sin((2 * Math.PI * n) / period + phase) ** 2;
      // The square of a sine is 1/2 in the mean; a sum over samples misses that by the square of their distance.
      expect(Math.abs(mean - 0.5)).toBeLessThan(3 / period ** 2);
    }
  }
});

test('a whole number of cycles weighs every sample alike', () => {
  expect([...allWeights(8, 4)]).toEqual(Array(8).fill(1 / 8));
  expect(() => wholeCycleWeights(3, 4)).toThrow(RangeError);
});

test('foldedMean and foldedMedian put each sample in the bin of its phase', () => {
  const omega = (2 * Math.PI) / 8;
  // Two cycles of eight; the centre, between samples 7 and 8, has phase 7.5 · ω when the first sample has 0.
  const samples = Float64Array.from({ length: 16 }, (_, n) => (n % 8) * 10 + (n < 8 ? 0 : 4));
  const phase = 7.5 * omega + 1e-9;
  expect([...foldedMean(storedResidual(samples), omega, phase, 8).bins]).toEqual([
    2, 12, 22, 32, 42, 52, 62, 72,
  ]);
  samples[3] = Number.NaN;
  expect([...foldedMedian(samples, omega, phase, 4)]).toEqual([7, 24, 47, 67]);
});
