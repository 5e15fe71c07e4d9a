import { expect, test } from 'vitest';
import { ASSUMED_INSTRUMENT } from '../../../src/measure/doubt/instrument.ts';
import { differenceComponents } from '../../../src/measure/power/differenceComponents.ts';

const rms = (wave: (x: number) => number): number => {
  const points = 4096;
  let square = 0;
  for (let n = 0; n < points; n++) square += wave((2 * Math.PI * n) / points) ** 2 / points;
  return Math.sqrt(square);
};
const sensitivities = (a: (x: number) => number, b: (x: number) => number): number[] =>
  differenceComponents({
    plusRms: rms(a),
    minusRms: rms(b),
    differenceRms: rms((x) => a(x) - b(x)),
    frequencyHz: 50,
    instrument: ASSUMED_INSTRUMENT,
    skewDoubtS: 1e-6,
  }).map(({ sensitivity }) => sensitivity);

test('sensitivities are the derivatives of the RMS of the difference, whatever the waves', () => {
  const a = (x: number): number => 170 * Math.sin(x) + 12 * Math.sin(3 * x + 1);
  const b = (x: number): number => -90 * Math.sin(x + 0.3) + 20 * Math.cos(5 * x);
  const [gainA, ratioA, gainB, ratioB] = sensitivities(a, b);
  const moved = (ofA: number, ofB: number): number =>
    rms((x) => a(x) * (1 + ofA / 100) - b(x) * (1 + ofB / 100));
  // A central difference over ± 0.001 % has an error of 1e-10 of the RMS; what it divides is rounding.
  const step = 1e-3;
  const slopeA = (moved(step, 0) - moved(-step, 0)) / (2 * step);
  const slopeB = (moved(0, step) - moved(0, -step)) / (2 * step);
  expect(Math.abs(gainA! - slopeA)).toBeLessThan(1e-8);
  expect(Math.abs(gainB! - slopeB)).toBeLessThan(1e-8);
  expect(ratioA).toBe(gainA);
  expect(ratioB).toBe(gainB);
  // Both off by one per cent: so is the difference.
  expect(Math.abs(gainA! + gainB! - rms((x) => a(x) - b(x)) / 100)).toBeLessThan(1e-12);
});

test('the skew counts where the two stand across, and is nothing in antiphase', () => {
  const a = (x: number): number => 100 * Math.sin(x);
  const skewOf = (deg: number): number =>
    sensitivities(a, (x) => 80 * Math.sin(x + (deg * Math.PI) / 180))[4]!;
  // Rounding of A²·B² leaves about 1e-7 of it.
  expect(Math.abs(skewOf(180))).toBeLessThan(0.01);
  const radiansPerS = 2 * Math.PI * 50;
  const moved = (rad: number): number => rms((x) => a(x) - 80 * Math.sin(x + Math.PI / 3 + rad));
  const slope = ((moved(1e-4) - moved(-1e-4)) / 2e-4) * radiansPerS;
  expect(Math.abs(skewOf(60) / slope - 1)).toBeLessThan(1e-6);
});

test('two poles in antiphase share the doubt; a voltage common to both multiplies it', () => {
  const half = (x: number): number => 60 * Math.sin(x);
  const shared = sensitivities(half, (x) => -half(x));
  expect(Math.abs(shared[0]! - 60 / Math.SQRT2 / 100)).toBeLessThan(1e-12);
  const common = (x: number): number => 600 * Math.sin(x);
  const raised = sensitivities((x) => half(x) + common(x), common);
  expect(Math.abs(raised[0]! - 660 / Math.SQRT2 / 100)).toBeLessThan(1e-9);
  expect(Math.abs(raised[2]! + 600 / Math.SQRT2 / 100)).toBeLessThan(1e-9);
});
