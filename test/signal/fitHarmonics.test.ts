import { expect, test } from 'vitest';
import { fitHarmonics } from '../../src/signal/fitHarmonics.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';
import reference from '../reference/signalValues.json' with { type: 'json' };

test('fitHarmonics(samples) finds the minimum that scipy.optimize.least_squares finds, and its covariance', () => {
  const { samples, start, omega, mean, cosine, sine, noise, deviation } = reference.fit;
  const fit = fitHarmonics(Float64Array.from(samples), { orders: 5, omega: start })!;
  // Both stop where the gradient drowns in rounding: the frequency to 1e-9 of itself, volts to 1e-6.
  expect(Math.abs(fit.omega / omega - 1)).toBeLessThan(1e-9);
  expect(Math.abs(fit.mean - mean)).toBeLessThan(1e-6);
  cosine.forEach((c, k) => {
    expect(Math.abs(fit.cosine[k]! - c)).toBeLessThan(1e-6);
  });
  sine.forEach((s, k) => {
    expect(Math.abs(fit.sine[k]! - s)).toBeLessThan(1e-6);
  });
  expect(Math.abs(fit.residualDeviation / noise - 1)).toBeLessThan(1e-9);
  const own = [fit.deviation.omega, fit.deviation.mean];
  for (let k = 0; k < 5; k++) own.push(fit.deviation.cosine[k]!, fit.deviation.sine[k]!);
  deviation.forEach((d, i) => {
    expect(Math.abs(own[i]! / d - 1)).toBeLessThan(1e-6);
  });
});

test('the tiny example of a three-parameter fit: 1 2 3 2 1 0 −1 0 over one cycle', () => {
  // By hand: mean 1, cosine 0, sine Σ y·sin / 4 = 1.7071067812, residual RMS 0.2071067812.
  const samples = Float64Array.of(1, 2, 3, 2, 1, 0, -1, 0);
  const omega = Math.PI / 4;
  const fit = fitHarmonics(samples, { orders: 1, omega, iterations: 0 })!;
  expect(Math.abs(fit.mean - 1)).toBeLessThan(1e-12);
  // The fit's phase counts from the record's centre, 3.5 samples in.
  const amplitude = Math.hypot(fit.cosine[0]!, fit.sine[0]!);
  expect(Math.abs(amplitude - 1.7071067811865475)).toBeLessThan(1e-12);
  expect(Math.abs(Math.atan2(fit.cosine[0]!, fit.sine[0]!) - 3.5 * omega)).toBeLessThan(1e-12);
  const squares = fit.residual.stretch(0, 8).reduce((sum, r) => sum + r * r, 0);
  expect(Math.abs(Math.sqrt(squares / 8) - 0.20710678118654752)).toBeLessThan(1e-12);
});

test('a single tone: the Cramér-Rao bounds of Rife and Boorstyn (IEEE Trans. Inf. Theory 20(5), 1974; formulas from memory)', () => {
  // N = 2000 at 10 kS/s, amplitude 325, noise 2, 50.03 Hz: bounds worked out from var(f) ≥ (fs/2π)²·24s²/(A²N(N²−1)),
  // var(A) ≥ 2s²/N, var(C) ≥ s²/N.
  const [count, rate, amplitude, noise, frequencyHz] = [2000, 10_000, 325, 2, 50.03];
  const normal = gaussianNumbers(randomNumbers(11));
  const omega = (2 * Math.PI * frequencyHz) / rate;
  const runs = 300;
  const errors = { frequency: 0, amplitude: 0, mean: 0 };
  for (let run = 0; run < runs; run++) {
    const samples = Float64Array.from(
      { length: count },
      (_, n) => amplitude * Math.cos(omega * n + run) + noise * normal(),
    );
    const fit = fitHarmonics(samples, { orders: 1, omega: omega * 1.002 })!;
    errors.frequency += ((fit.omega * rate) / (2 * Math.PI) - frequencyHz) ** 2 / runs;
    errors.amplitude += (Math.hypot(fit.cosine[0]!, fit.sine[0]!) - amplitude) ** 2 / runs;
    errors.mean += fit.mean ** 2 / runs;
    if (run > 0) continue;
    // What the fit states of itself is the bound, but for the residual's own scatter of 1/√(2N) = 1.6 %.
    expect(Math.abs((fit.deviation.omega * rate) / (2 * Math.PI) / 5.36448e-4 - 1)).toBeLessThan(0.05);
    expect(Math.abs(fit.deviation.cosine[0]! / 0.0632456 - 1)).toBeLessThan(0.06);
    expect(Math.abs(fit.deviation.mean / 0.0447214 - 1)).toBeLessThan(0.06);
  }
  // A variance from 300 runs scatters by √(2/300) = 8 %, its root by 4 %: four times that.
  expect(Math.abs(Math.sqrt(errors.frequency) / 5.36448e-4 - 1)).toBeLessThan(0.17);
  expect(Math.abs(Math.sqrt(errors.amplitude) / 0.0632456 - 1)).toBeLessThan(0.17);
  expect(Math.abs(Math.sqrt(errors.mean) / 0.0447214 - 1)).toBeLessThan(0.17);
});

test('missing samples are left out: the fit of what is there is exact all the same', () => {
  const omega = (2 * Math.PI) / 150.7;
  const samples = Float64Array.from({ length: 700 }, (_, n) =>
    n > 200 && n < 260 ? Number.NaN : 4 + 100 * Math.sin(omega * n) + 8 * Math.cos(2 * omega * n + 1),
  );
  samples[30] = Number.NaN;
  const fit = fitHarmonics(samples, { orders: 4, omega: omega * 1.01 })!;
  expect(fit.count).toBe(700 - 60);
  expect(Math.abs(fit.omega / omega - 1)).toBeLessThan(1e-12);
  expect(Math.abs(fit.mean - 4)).toBeLessThan(1e-9);
  expect(Math.abs(Math.hypot(fit.cosine[1]!, fit.sine[1]!) - 8)).toBeLessThan(1e-9);
  expect(Number.isNaN(fit.residual.stretch(230, 231)[0]!)).toBe(true);
});

test('a record too short for its orders, or a start far off, gives null and no wrong fit', () => {
  const samples = Float64Array.from({ length: 100 }, (_, n) => Math.sin(n / 3));
  expect(fitHarmonics(samples.subarray(0, 8), { orders: 4, omega: 0.33 })).toBeNull();
  expect(fitHarmonics(new Float64Array(100), { orders: 2, omega: 0.3 })).toBeNull();
});

test('orders at or above half the sample rate are refused', () => {
  expect(() => fitHarmonics(new Float64Array(100), { orders: 10, omega: 0.4 })).toThrow(RangeError);
  expect(() => fitHarmonics(new Float64Array(100), { orders: 0, omega: 0.4 })).toThrow(RangeError);
});
