import { expect, test } from 'vitest';
import { choleskyFactor } from '../../src/signal/choleskyFactor.ts';
import { fitHarmonics } from '../../src/signal/fitHarmonics.ts';

const omega = 0.0377;
const wave = (u: number): number =>
  2 + 3 * Math.cos(omega * u) - Math.sin(omega * u) + 0.25 * Math.cos(3 * omega * u);
const samples = Float64Array.from({ length: 701 }, (_, n) => wave(n - 350));

test('fitHarmonics with the frequency known gives the coefficients at that frequency and none of its doubt', () => {
  const fit = fitHarmonics(samples, { orders: 4, omega, frequencyKnown: true })!;
  expect(fit.omega).toBe(omega);
  expect(fit.deviation.omega).toBe(0);
  const expected = { cosine: [3, 0, 0.25, 0], sine: [-1, 0, 0, 0] };
  for (let k = 0; k < 4; k++) {
    expect(Math.abs(fit.cosine[k]! - expected.cosine[k]!)).toBeLessThan(1e-11);
    expect(Math.abs(fit.sine[k]! - expected.sine[k]!)).toBeLessThan(1e-11);
  }
});

test('it does not move from a frequency that fits badly, and fits a record of nothing', () => {
  const off = fitHarmonics(samples, { orders: 4, omega: 1.01 * omega, frequencyKnown: true })!;
  expect(off.omega).toBe(1.01 * omega);
  expect(off.residualDeviation).toBeGreaterThan(0.01);
  const nothing = fitHarmonics(new Float64Array(701), { orders: 2, omega, frequencyKnown: true })!;
  expect([...nothing.cosine, ...nothing.sine, ...nothing.deviation.cosine]).toEqual([0, 0, 0, 0, 0, 0]);
});

test('its deviations are those of a linear fit: σ·√ of the diagonal of (BᵀB)⁻¹, no frequency among them', () => {
  // 1.3 cycles, where columns look most alike.
  const short = samples.subarray(0, 220).map((x, n) => x + 0.1 * Math.sin(n * n * 0.7 + 1));
  const fit = fitHarmonics(short, { orders: 2, omega, frequencyKnown: true })!;
  const row = (n: number): number[] => {
    const phase = omega * (n - 219 / 2);
    return [1, Math.cos(phase), Math.cos(2 * phase), Math.sin(phase), Math.sin(2 * phase)];
  };
  const values = new Float64Array(25);
  for (let n = 0; n < 220; n++) {
    const columns = row(n);
    for (let i = 0; i < 25; i++) values[i]! += columns[Math.floor(i / 5)]! * columns[i % 5]!;
  }
  const variances = choleskyFactor({ size: 5, values })!.inverseDiagonal();
  const deviations = [fit.deviation.mean, ...fit.deviation.cosine, ...fit.deviation.sine];
  // Five parameters, not six: the sum of squares is divided by 215.
  const sigma = Math.sqrt(
    fit.residual.stretch(0, fit.residual.length).reduce((sum, r) => sum + r * r, 0) / 215,
  );
  deviations.forEach((deviation, i) => {
    expect(Math.abs(deviation / (sigma * Math.sqrt(variances[i]!)) - 1)).toBeLessThan(1e-9);
  });
});
