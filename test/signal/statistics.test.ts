import { expect, test } from 'vitest';
import { quantisationStep } from '../../src/signal/quantisation.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';
import { blockMeans } from '../../src/signal/recordParts.ts';
import { compensatedSum, differenceNoise, median, moments } from '../../src/signal/statistics.ts';

// NIST StRD, Univariate Summary Statistics: NumAcc2 to 4 are a first value, then alternately 0.1 below and above it.
const numAcc = (first: number): number[] =>
  Array.from({ length: 1001 }, (_, i) => (i === 0 ? first : first + (i % 2 === 1 ? -0.1 : 0.1)));

test('moments(samples) gives the certified means and deviations of NIST StRD NumAcc1 to 4', () => {
  // The last two can't be written in double precision: what the input loses, 1e-8, bounds the result.
  const sets: [number[], number, number, number][] = [
    [[10000001, 10000003, 10000002], 10000002, 1, 0],
    [numAcc(1.2), 1.2, 0.1, 1e-14],
    [numAcc(1000000.2), 1000000.2, 0.1, 1e-9],
    [numAcc(10000000.2), 10000000.2, 0.1, 1e-8],
  ];
  for (const [values, mean, deviation, tolerance] of sets) {
    const found = moments(values);
    expect(Math.abs(found.mean - mean)).toBeLessThanOrEqual(tolerance);
    expect(Math.abs(found.standardDeviation - deviation)).toBeLessThanOrEqual(tolerance);
  }
});

test('moments(samples) skips what is missing', () => {
  const { count, mean, max, min } = moments(Float64Array.of(Number.NaN, 2, 4, Number.NaN));
  expect({ count, mean, max, min }).toEqual({ count: 2, mean: 3, max: 4, min: 2 });
  expect(() => moments([Number.NaN])).toThrow(RangeError);
});

test('compensatedSum(samples) keeps what a plain sum loses', () => {
  expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
  expect(compensatedSum(Array(10).fill(0.1))).toBe(1);
  expect(compensatedSum([])).toBe(0);
});

test('median(values) is the middle one, or the mean of the two', () => {
  expect(median([3, 1, 2])).toBe(2);
  expect(median([4, 1, 3, 2])).toBe(2.5);
  expect(() => median([])).toThrow(RangeError);
});

test('blockMeans(samples) averages whole blocks and leaves holes out', () => {
  expect([...blockMeans(Float64Array.of(1, 3, Number.NaN, 7, 9), 2)]).toEqual([2, 7]);
});

test('differenceNoise(samples) finds white noise under a sine and under steps', () => {
  const normal = gaussianNumbers(randomNumbers(3));
  // The median of 20 000 sizes scatters by about 1 %: four times that.
  for (const shape of [(n: number) => 100 * Math.sin(n / 200), (n: number) => (n % 500 < 250 ? 100 : -100)]) {
    const noise = differenceNoise(Float64Array.from({ length: 20_000 }, (_, n) => shape(n) + 0.5 * normal()));
    expect(Math.abs(noise / 0.5 - 1)).toBeLessThan(0.04);
  }
});

test('quantisationStep(samples) reads the step off the values, and none off smooth data', () => {
  const codes = Float64Array.from({ length: 4000 }, (_, n) => Math.round(80 * Math.sin(n / 100)) * 1.6);
  expect(Math.abs(quantisationStep(codes)! - 1.6)).toBeLessThan(1e-12);
  const printed = codes.map((x) => Number((x * 1.0001).toFixed(2)));
  expect(Math.abs(quantisationStep(printed)! / 1.6 - 1)).toBeLessThan(0.001);
  expect(quantisationStep(Float64Array.from({ length: 4000 }, (_, n) => Math.sin(n / 100)))).toBeNull();
  expect(quantisationStep(new Float64Array(10))).toBeNull();
  // Few values: the levels of a staircase, unless the record flickers between them.
  const few = (noise: number): Float64Array => {
    const normal = gaussianNumbers(randomNumbers(2));
    return Float64Array.from({ length: 4000 }, (_, n) => Math.round(4 * Math.sin(n / 60) + noise * normal()));
  };
  expect(quantisationStep(few(0))).toBeNull();
  expect(quantisationStep(few(0.4))).toBe(1);
});

test('quantisationStep(samples) takes neither two levels of pulses for codes, nor noise between two codes for a wave', () => {
  const pulses = Float64Array.from({ length: 6000 }, (_, n) => (n % 40 < 4 + (n % 31) ? 300 : -300));
  expect(quantisationStep(pulses)).toBeNull();
  const random = randomNumbers(7);
  expect(quantisationStep(pulses.map(() => (random() < 0.05 ? 1.6 : 0)))).toBe(1.6);
});
