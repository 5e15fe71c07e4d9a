import { expect, test } from 'vitest';
import { squaredDifference } from '../../src/signal/firstPeriod.ts';
import { hannPower, strongestLine } from '../../src/signal/hannPower.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';
import reference from '../reference/signalValues.json' with { type: 'json' };

test('the Hann window has a noise bandwidth of 1.5 bins (Harris 1978; scipy.signal agrees), so Σw² = 3N/8', () => {
  expect(reference.hannNoiseBandwidthBins).toBe(1.5);
  const size = 64;
  let square = 0;
  for (let n = 0; n < size; n++) square += (0.5 - 0.5 * Math.cos((2 * Math.PI * n) / size)) ** 2;
  expect(Math.abs(square - (3 * size) / 8)).toBeLessThan(1e-12);
});

test('strongestLine(hannPower(samples)) finds frequency and RMS of a tone, on a bin or between two', () => {
  for (const bin of [200, 200.25, 200.5]) {
    const omega = (2 * Math.PI * bin) / 1024;
    const samples = Float64Array.from({ length: 1100 }, (_, n) => 3 * Math.sin(omega * n + 1));
    const line = strongestLine(hannPower(samples)!, 0.1)!;
    // Five bins hold all of the window's main lobe but 0.1 %; the centroid is good to a tenth of a bin.
    expect(Math.abs(line.rms / (3 / Math.SQRT2) - 1)).toBeLessThan(0.002);
    expect(Math.abs(line.omega - omega)).toBeLessThan((0.1 * 2 * Math.PI) / 1024);
    expect(line.prominence).toBeGreaterThan(100);
  }
});

test('white noise has no line that stands out', () => {
  const normal = gaussianNumbers(randomNumbers(8));
  for (let run = 0; run < 20; run++) {
    const line = strongestLine(hannPower(Float64Array.from({ length: 4096 }, normal))!, 0)!;
    expect(line.prominence).toBeLessThan(25);
  }
});

test('squaredDifference(samples) equals its definition', () => {
  const samples = Float64Array.from({ length: 40 }, (_, n) => Math.sin(n) + 0.1 * n);
  const mean = samples.reduce((sum, x) => sum + x / 40, 0);
  const variance = samples.reduce((sum, x) => sum + (x - mean) ** 2 / 40, 0);
  squaredDifference(samples).forEach((d, lag) => {
    let sum = 0;
    for (let n = 0; n + lag < 40; n++) sum += (samples[n]! - samples[n + lag]!) ** 2;
    expect(Math.abs(d - sum / (40 - lag) / (2 * variance))).toBeLessThan(1e-12);
  });
});
