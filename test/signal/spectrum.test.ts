import { expect, test } from 'vitest';
import { fourier, powerOfTwoAtLeast, spectrum } from '../../src/signal/spectrum.ts';
import reference from '../reference/signalValues.json' with { type: 'json' };

// Sixteen additions of numbers near one: rounding stays under 1e-14.
const ROUNDING = 1e-14;

test('spectrum(samples) equals numpy.fft.rfft', () => {
  const { re, im } = spectrum(Float64Array.from(reference.spectrum.in));
  expect(re.length).toBe(9);
  reference.spectrum.re.forEach((x, k) => {
    expect(Math.abs(re[k]! - x)).toBeLessThan(ROUNDING);
    expect(Math.abs(im[k]! - reference.spectrum.im[k]!)).toBeLessThan(ROUNDING);
  });
});

test('spectrum(samples) equals the direct sum of its definition', () => {
  const samples = Float64Array.from({ length: 32 }, (_, n) => Math.sin(n * n));
  const { re, im } = spectrum(samples);
  for (let k = 0; k <= 16; k++) {
    let [sumRe, sumIm] = [0, 0];
    samples.forEach((x, n) => {
      sumRe += x * Math.cos((2 * Math.PI * k * n) / 32);
      sumIm -= x * Math.sin((2 * Math.PI * k * n) / 32);
    });
    expect(Math.abs(re[k]! - sumRe)).toBeLessThan(1e-13);
    expect(Math.abs(im[k]! - sumIm)).toBeLessThan(1e-13);
  }
});

test('a sine of amplitude A on bin k gives A·N/2 there and nothing elsewhere', () => {
  const samples = Float64Array.from({ length: 64 }, (_, n) => 3 * Math.sin((2 * Math.PI * 5 * n) / 64));
  const { re, im } = spectrum(samples);
  re.forEach((x, k) => {
    expect(Math.abs(Math.hypot(x, im[k]!) - (k === 5 ? 96 : 0))).toBeLessThan(1e-12);
  });
});

test('fourier(size).inverse gives the samples of a spectrum back', () => {
  const samples = Float64Array.from({ length: 128 }, (_, n) => Math.cos(n) + n / 50);
  fourier(128)
    .inverse(spectrum(samples))
    .forEach((x, n) => {
      expect(Math.abs(x - samples[n]!)).toBeLessThan(1e-13);
    });
});

test('a size that is no power of two is refused', () => {
  for (const size of [0, 2, 3, 12, 100]) expect(() => spectrum(new Float64Array(size))).toThrow(RangeError);
});

test('powerOfTwoAtLeast(count) is the next power of two, 4 at the least', () => {
  expect([1, 4, 5, 64, 65].map(powerOfTwoAtLeast)).toEqual([4, 4, 8, 64, 128]);
});
