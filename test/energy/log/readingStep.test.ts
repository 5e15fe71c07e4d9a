import { expect, test } from 'vitest';
import { readingStep } from '../../../src/energy/log/readingStep.ts';

const readings = (count: number, value: (i: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => value(i));

test('what a meter tells apart, in the file’s own numbers', () => {
  // Even watts, printed as whole ones; thousandths of an ampere, printed in microamperes.
  expect(
    readingStep(
      readings(200, (i) => 2 * ((i * i) % 7)),
      0,
    ),
  ).toBe(2);
  expect(
    readingStep(
      readings(200, (i) => 720_000 + 1000 * ((i * i) % 23)),
      0,
    ),
  ).toBe(1000);
  expect(
    readingStep(
      readings(200, (i) => 12.5 + 0.01 * ((i * 7) % 11)),
      2,
    ),
  ).toBe(0.01);
});

test.each([
  ['steady', () => 100],
  ['switched off once', (i: number) => (i < 150 ? 100 : 0)],
  ['on and off', (i: number) => (i % 20 < 10 ? 50 : 0)],
  ['climbing and reset', (i: number) => 6.25 * Math.min(i % 12, 9) * Number(i % 12 < 9)],
  ['in a few levels', (i: number) => [100, 120, 80][Math.floor(i / 70)]!],
])('a load that is %s tells no more than the last digit printed', (_, value) => {
  expect(readingStep(readings(200, value), 2)).toBe(0.01);
});
