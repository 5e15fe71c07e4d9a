import { expect, test } from 'vitest';
import { decimator } from '../../src/signal/decimator.ts';
import { lineSpectrum } from '../../src/signal/lineSpectrum.ts';
import { randomNumbers } from '../../src/signal/randomNumbers.ts';
import { spectrum } from '../../src/signal/spectrum.ts';

/** The slow twin: each line summed as its definition has it. */
function directLine(samples: Float64Array, omega: number): { re: number; im: number } {
  let re = 0;
  let im = 0;
  samples.forEach((x, n) => {
    re += x * Math.cos(omega * n);
    im -= x * Math.sin(omega * n);
  });
  return { re, im };
}

const noise = (count: number, seed: number): Float64Array => {
  const uniform = randomNumbers(seed);
  return Float64Array.from({ length: count }, () => uniform() - 0.5);
};

test('lineSpectrum(samples) equals the sums of its definition, at any spacing, up to half the sample rate', () => {
  for (const [length, count] of [
    [1, 3],
    [7, 5],
    [500, 251],
    [701, 97],
    [1025, 600],
  ] as const) {
    const samples = noise(length, length);
    const spacing = Math.PI / (count - 0.7);
    const lines = lineSpectrum(samples, spacing, count);
    const size = samples.reduce((sum, x) => sum + Math.abs(x), 0);
    for (let k = 0; k < count; k++) {
      const twin = directLine(samples, k * spacing);
      // The kernel of twelve bins leaves about 1e-10 of Σ|x|.
      expect(Math.hypot(lines.re[k]! - twin.re, lines.im[k]! - twin.im)).toBeLessThan(1e-9 * size);
    }
  }
});

test('on the bins of a fast transform it is that transform', () => {
  const samples = noise(256, 3);
  const bins = spectrum(samples);
  const lines = lineSpectrum(samples, (2 * Math.PI) / 256, 129);
  // Σ|x| is about 64: 1e-9 of it.
  for (let k = 0; k <= 128; k++) {
    expect(Math.hypot(lines.re[k]! - bins.re[k]!, lines.im[k]! - bins.im[k]!)).toBeLessThan(6.4e-8);
  }
});

test('lines far below half the sample rate are read off a thinned record: white noise folds by 1e-5', () => {
  const samples = noise(20_011, 4);
  const spacing = 0.0031;
  const lines = lineSpectrum(samples, spacing, 11);
  const rms = Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0));
  for (let k = 0; k < 11; k++) {
    const twin = directLine(samples, k * spacing);
    // Each image within reach brings at most 9e-6 of a line of white noise, √Σx² in size; the highest of them 4 times that.
    expect(Math.hypot(lines.re[k]! - twin.re, lines.im[k]! - twin.im)).toBeLessThan(4 * 2 * 9e-6 * rms);
  }
});

test('decimator(factor) keeps the sum, delays nothing and states its gain', () => {
  const pulse = new Float64Array(101);
  pulse[50] = 1;
  const { thin, first, gainAt } = decimator(5);
  const samples = thin(pulse);
  // Σ thinned · factor = Σ record: the comb of images sees a pulse of the cascade, 25 wide, as flat to (its zeros) 1e-15.
  expect(Math.abs(5 * samples.reduce((sum, x) => sum + x, 0) - 1)).toBeLessThan(1e-14);
  const balance = samples.reduce((sum, x, j) => sum + 5 * x * (first + 5 * j), 0);
  expect(Math.abs(balance - 50)).toBeLessThan(1e-12);
  expect(gainAt(0)).toBe(1);
  expect(Math.abs(gainAt(0.1) - (Math.sin(0.25) / (5 * Math.sin(0.05))) ** 6)).toBeLessThan(1e-15);
  expect(() => decimator(2.5)).toThrow(RangeError);
});

test('lines above half the sample rate are a mistake of the programmer', () => {
  expect(() => lineSpectrum(noise(64, 1), 0.1, 40)).toThrow(RangeError);
});
