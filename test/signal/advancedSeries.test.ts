import { expect, test } from 'vitest';
import { seriesAt } from '../../src/signal/harmonicSeries.ts';
import { timeShiftedSeries } from '../../src/signal/phasors.ts';

test('advancedSeries(series, a) at a phase is the series at that phase plus a', () => {
  const series = {
    mean: 3,
    cosine: Float64Array.of(1, -0.5, 0.2),
    sine: Float64Array.of(-2, 0.3, 0.7),
  };
  for (const advance of [0.1, -1.3, Math.PI, 40]) {
    const earlier = timeShiftedSeries(series, advance);
    for (const phase of [0, 0.7, 2.9, -4]) {
      // Rounding of the phases alone.
      expect(Math.abs(seriesAt(earlier, phase) - seriesAt(series, phase + advance))).toBeLessThan(1e-13);
    }
  }
});
