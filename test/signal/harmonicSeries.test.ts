import { expect, test } from 'vitest';
import { sampleCycle, seriesAt } from '../../src/signal/harmonicSeries.ts';

test('sampleCycle(series, points, phase) is the series at evenly spaced phases', () => {
  const series = {
    mean: 2,
    cosine: Float64Array.from({ length: 50 }, (_, k) => Math.cos(3 * k) / (k + 1)),
    sine: Float64Array.from({ length: 50 }, (_, k) => Math.sin(5 * k) / (k + 1)),
  };
  for (const [points, phase] of [
    [128, 0],
    [1024, 0.7],
    [16_384, -2.9],
  ] as const) {
    const cycle = sampleCycle(series, points, phase);
    expect(cycle.length).toBe(points);
    // Fifty orders turned on from each other, each rounding by 1e-16 of some units.
    cycle.forEach((value, n) => {
      expect(Math.abs(value - seriesAt(series, (2 * Math.PI * n) / points + phase))).toBeLessThan(1e-12);
    });
  }
});

test('too few points for the orders are refused', () => {
  const series = { mean: 0, cosine: new Float64Array(8), sine: new Float64Array(8) };
  expect(() => sampleCycle(series, 16)).toThrow(RangeError);
  expect(() => sampleCycle(series, 100)).toThrow(RangeError);
});
