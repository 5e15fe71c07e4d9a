import { expect, test } from 'vitest';
import type { Figure } from '../../../src/base/figure.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { numberOf } from './figureNumbers.ts';
import { powerOf } from './measured.ts';

const record = { sampleRateHz: 20_000, durationS: 0.0667 };
const ROOTS = [
  'nonactiveVar',
  'nonfundamentalApparentVA',
  'currentDistortionVar',
  'voltageDistortionVar',
  'harmonicApparentVA',
  'harmonicDistortionVar',
  'harmonicPollutionPercent',
] as const;
const boundOf = (figure: Figure): number | undefined => (figure.value === null ? undefined : figure.notAbove);

test('a resistor on a sine, through offsets, noise and codes: what is nothing in truth is a bound, and holds', () => {
  let held = 0;
  const runs = 40;
  for (let run = 0; run < runs; run++) {
    const uniform = randomNumbers(900 + run);
    const normal = gaussianNumbers(randomNumbers(5000 + run));
    const within = (halfWidth: number): number => halfWidth * (2 * uniform() - 1);
    const [ohms, phase] = [20 + 500 * uniform(), 6.28 * uniform()];
    const sine = (t: number): number => 170 * Math.sin(2 * Math.PI * 60 * t + phase);
    const through = (wave: (t: number) => number, full: number): ((t: number) => number) => {
      const [gain, offset, step] = [1 + within(0.03), within(0.01 * 2 * full), (2.4 * full) / 256];
      return (t) => step * Math.round((gain * wave(t) + offset + 0.003 * full * normal()) / step);
    };
    const power = powerOf(
      through(sine, 170),
      through((t) => sine(t) / ohms, 170 / ohms),
      record,
    );
    // No root of squares is said to be something.
    for (const key of ROOTS) expect(boundOf(power[key]), `${key} of run ${run}`).toBeDefined();
    // Signed figures and the rest are no bounds.
    for (const key of ['activeW', 'apparentVA', 'fundamentalReactiveVar', 'harmonicActiveW'] as const) {
      expect(boundOf(power[key])).toBeUndefined();
    }
    // Nothing is below every bound; the bound is of the size of what the chain may do: 1 % of range, 2.8 % of a sine.
    if (boundOf(power.nonactiveVar)! < 0.12 * numberOf(power.apparentVA)) held++;
  }
  expect(held).toBe(runs);
});

test('a load that is no resistor keeps its nonactive and distortion powers, and the interval holds them', () => {
  // 30 % of third harmonic and a lag of 40 degrees: DI = 0.3 S1, Q1 = S1 sin 40°.
  const volts = (t: number): number => 170 * Math.sin(2 * Math.PI * 60 * t);
  const amperes = (t: number): number =>
    10 * Math.sin(2 * Math.PI * 60 * t - (40 * Math.PI) / 180) + 3 * Math.sin(2 * Math.PI * 180 * t);
  const power = powerOf(volts, amperes, record);
  const apparent = 850;
  for (const [key, truth] of [
    ['nonactiveVar', apparent * Math.hypot(Math.sin((40 * Math.PI) / 180), 0.3)],
    ['currentDistortionVar', apparent * 0.3],
    ['nonfundamentalApparentVA', apparent * 0.3],
  ] as const) {
    const figure = power[key];
    if (figure.value === null) throw new Error(JSON.stringify(figure.reason));
    expect(figure.notAbove, key).toBeUndefined();
    expect(Math.abs(figure.value - truth)).toBeLessThan(figure.uncertainty);
  }
  // The voltage is a sine: its distortion power is a bound all the same.
  expect(boundOf(power.voltageDistortionVar)).toBeDefined();
});
