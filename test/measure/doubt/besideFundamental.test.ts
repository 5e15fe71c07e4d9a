import { expect, test } from 'vitest';
import { besideFundamental } from '../../../src/measure/doubt/besideFundamental.ts';
import { fitHarmonics } from '../../../src/signal/fitHarmonics.ts';
import type { HarmonicFit } from '../../../src/signal/harmonicFit.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { seriesResidual } from '../../../src/signal/residual.ts';

const [RATE_HZ, COUNT, OWN_HZ] = [20_000, 2400, 50];

/** Six cycles of 50 Hz, 100 V, noise of 0.3 V, and a line beside it; fitted with its frequency. */
function fitted(lineHz: number, ratio: number, phase: number, seed: number): HarmonicFit {
  const normal = gaussianNumbers(randomNumbers(seed));
  const samples = Float64Array.from({ length: COUNT }, (_, n) => {
    const t = n / RATE_HZ;
    const line = 100 * ratio * Math.sin(2 * Math.PI * lineHz * t + phase);
    return 100 * Math.sin(2 * Math.PI * OWN_HZ * t) + line + 0.3 * normal();
  });
  return fitHarmonics(samples, { orders: 10, omega: (2 * Math.PI * OWN_HZ) / RATE_HZ })!;
}

test('a line some cycles over the record away, or under one: the deviation covers what the fit was pulled by', () => {
  let held = 0;
  let runs = 0;
  for (const apartHz of [-14, -9, -5, -3, 3, 5, 9, 14]) {
    for (let i = 0; i < 16; i++) {
      const fit = fitted(OWN_HZ + apartHz, 0.02, (2 * Math.PI * i) / 16, 100 + i);
      const pulled = Math.abs(fit.omega - (2 * Math.PI * OWN_HZ) / RATE_HZ);
      const { omegaDeviation } = besideFundamental(fit, 1);
      if (pulled <= 2 * Math.hypot(omegaDeviation, fit.deviation.omega)) held++;
      runs++;
    }
  }
  // Of 128, 92 % is 118; its binomial deviation is 3.
  expect(held / runs).toBeGreaterThan(0.92);
});

test('a line that is resolved is found where it stands, at its size', () => {
  // 1.6 cycles over the record of 0.12 s: 13.3 Hz.
  const { line } = besideFundamental(fitted(OWN_HZ + 1.6 / 0.12, 0.02, 1, 3), 1);
  // Within 0.05 Hz: two hundredths of a line's width.
  expect(Math.abs((line!.apartOmega * RATE_HZ) / (2 * Math.PI) - 1.6 / 0.12)).toBeLessThan(0.05);
  // Noise of 0.3 V on 2400 samples: 0.009 % of 100 V.
  expect(Math.abs(line!.ratio - 0.02)).toBeLessThan(0.001);
});

test('white noise alone shows in about one record of a thousand', () => {
  let seen = 0;
  for (let seed = 0; seed < 300; seed++) {
    const { omegaDeviation, line } = besideFundamental(fitted(OWN_HZ, 0, 0, 9000 + seed), 1);
    if (omegaDeviation > 0) seen++;
    expect(line === null).toBe(omegaDeviation === 0);
  }
  // Four or more of 300 at one in a thousand: 3e-4.
  expect(seen).toBeLessThan(4);
});

test('a residual worked out in stretches gives the same as one held in memory', () => {
  const fit = fitted(OWN_HZ + 4, 0.02, 1, 5);
  const held = besideFundamental(fit, 1);
  const samples = fit.residual.stretch(0, COUNT).map((r) => r);
  const none = { mean: 0, cosine: new Float64Array(1), sine: new Float64Array(1) };
  const again = besideFundamental({ ...fit, residual: seriesResidual(samples, none, fit.omega) }, 1);
  // Other sums of the same numbers.
  expect(Math.abs(again.omegaDeviation / held.omegaDeviation - 1)).toBeLessThan(1e-9);
});
