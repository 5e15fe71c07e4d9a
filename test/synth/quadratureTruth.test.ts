import { expect, test } from 'vitest';
import type { KnownWave } from '../../src/synth/knownWave.ts';
import { halfWave } from '../../src/synth/polylineWave.ts';
import { gaussLegendre, quadratureTruth } from '../../src/synth/quadratureTruth.ts';
import { clippedSine, sineWithHarmonics, sineWithRipple } from '../../src/synth/sines.ts';
import { modifiedSine, squareWave } from '../../src/synth/steppedWaves.ts';
import { withRinging } from '../../src/synth/withRinging.ts';

// The accuracy that quadratureTruth states, on waves of height 1.
const STATED = 1e-10;

test('gaussLegendre(n) integrates powers up to 2n − 1 exactly', () => {
  const { nodes, weights } = gaussLegendre(20);
  for (let power = 0; power <= 39; power++) {
    const sum = nodes.reduce((total, node, i) => total + weights[i]! * node ** power, 0);
    expect(Math.abs(sum - (power % 2 === 0 ? 2 / (power + 1) : 0))).toBeLessThan(1e-13);
  }
});

const corner = Math.asin(0.8) / (2 * Math.PI);
test.each<[string, KnownWave, number[], number]>([
  ['clipped sine', clippedSine(0.8), [corner, 0.5 - corner, 0.5 + corner, 1 - corner], 1],
  ['half wave', halfWave(), [0, 0.5], 1],
  ['square', squareWave(), [0, 0.5], 1],
  [
    'square with edges and tilt',
    squareWave({ edgeCycles: 0.02, tiltRatio: 0.1 }),
    [0.01, 0.49, 0.51, 0.99],
    1,
  ],
  ['modified sine', modifiedSine({ dutyRatio: 0.6 }), [0.1, 0.4, 0.6, 0.9], 1],
  ['harmonics', sineWithHarmonics([{ order: 9, ratio: 0.3, phaseRad: 1 }]), [], 9],
])('closed form and quadrature agree: %s', (_, { at, truth }, breaks, fastestOrder) => {
  const numeric = quadratureTruth(at, breaks, fastestOrder);
  expect(Math.abs(numeric.rms - truth.rms)).toBeLessThan(STATED);
  expect(Math.abs(numeric.mean - truth.mean)).toBeLessThan(STATED);
  // The extremes of a line that ends in a jump are reached a hair before it.
  expect(Math.abs(numeric.peak - truth.peak)).toBeLessThan(STATED);
  expect(Math.abs(numeric.trough - truth.trough)).toBeLessThan(STATED);
  for (const level of [0, 0.3, -0.9]) {
    const difference = numeric.meanAbsoluteAbout(level) - truth.meanAbsoluteAbout(level);
    expect(Math.abs(difference)).toBeLessThan(STATED);
  }
  for (const order of [1, 2, 3, 9, 50]) {
    const [a, b] = [numeric.harmonic(order), truth.harmonic(order)];
    expect(Math.abs(a.rms * Math.cos(a.phaseRad) - b.rms * Math.cos(b.phaseRad))).toBeLessThan(STATED);
    expect(Math.abs(a.rms * Math.sin(a.phaseRad) - b.rms * Math.sin(b.phaseRad))).toBeLessThan(STATED);
  }
});

test('a ringing top in closed form: mean square of a decaying sine on a square wave', () => {
  // On a top of h = 1/2 cycle: ∫ (1 + r e^(−u/d) sin ωu)² du = h + 2r I(1/d) + r² J, with
  // I(a) = (ω − e^(−ah)(a sin ωh + ω cos ωh))/(a² + ω²) and ∫ e^(−2au) sin² ωu du
  // = (1 − e^(−2ah))/(4a) − ½ Re[(1 − e^(−(2a − 2iω)h))/(2a − 2iω)]; here ωh is a whole number of turns.
  const [r, a, h] = [0.3, 1 / 0.04, 0.5];
  const omega = 2 * Math.PI * 30;
  const tops = [
    { from: 0, to: 0.5, sign: 1 },
    { from: 0.5, to: 1, sign: -1 },
  ];
  const wave = withRinging(squareWave(), tops, [0, 0.5], { ratio: r, order: 30, decayCycles: 0.04 });
  const first = (omega * (1 - Math.exp(-a * h))) / (a ** 2 + omega ** 2);
  const second =
    (1 - Math.exp(-2 * a * h)) / (4 * a) -
    ((1 - Math.exp(-2 * a * h)) * 2 * a) / (2 * (4 * a ** 2 + 4 * omega ** 2));
  expect(Math.abs(wave.truth.rms ** 2 - 2 * (h + 2 * r * first + r ** 2 * second))).toBeLessThan(STATED);
});

test('ripple that is no harmonic: the truth of an endless record', () => {
  // Two thousand cycles of a ripple at 37.3819 times the wave: every phase meets every phase, to about 1e-4.
  const wave = sineWithRipple(37.3819, 0.2);
  const [cycles, perCycle] = [2000, 601];
  let squares = 0;
  let distances = 0;
  for (let i = 0; i < cycles * perCycle; i++) {
    const value = wave.at(i / perCycle);
    squares += value ** 2 / (cycles * perCycle);
    distances += Math.abs(value - 0.1) / (cycles * perCycle);
  }
  expect(Math.abs(wave.truth.rms ** 2 - squares)).toBeLessThan(1e-4);
  expect(Math.abs(wave.truth.meanAbsoluteAbout(0.1) - distances)).toBeLessThan(1e-4);
  expect([wave.truth.peak, wave.truth.trough]).toEqual([1.2, -1.2]);
});
