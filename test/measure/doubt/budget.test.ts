import { expect, test } from 'vitest';
import { budgeted, effectiveDegreesOfFreedom } from '../../../src/measure/doubt/budget.ts';
import { type Component, type Distribution, scatter, within } from '../../../src/measure/doubt/component.ts';
import { coverageHalfWidth } from '../../../src/measure/doubt/coverageHalfWidth.ts';
import { roundingLeft } from '../../../src/measure/ordersOf.ts';
import reference from '../../reference/coverage.json' with { type: 'json' };

const part = (distribution: string, u: number, degreesOfFreedom: number | null): Component => ({
  source: `${distribution} ${u}`,
  type: 'A',
  distribution: distribution as Distribution,
  standardUncertainty: u,
  unit: 'U',
  sensitivity: 1,
  ...(degreesOfFreedom === null ? {} : { degreesOfFreedom }),
});

test('coverageHalfWidth(components) holds 95.45 % of their sum, as scipy finds by inverting characteristic functions', () => {
  for (const { parts, halfWidth } of reference) {
    const components = parts.map(([kind, u, degrees]) =>
      part(kind as string, u as number, degrees as number | null),
    );
    // A grid of 0.03 u, its cells filled exactly and interpolated.
    expect(Math.abs(coverageHalfWidth(components) / halfWidth - 1)).toBeLessThan(0.002);
  }
});

test('JCGM 100:2008, H.1 (end gauge): five components make 32 nm, Welch-Satterthwaite makes 16', () => {
  // Table H.1: calibration of the standard 25 nm (18 degrees), measured difference 9.7 nm from 5.8 (24), 3.9 (5) and
  // 6.7 (8), thermal expansion 2.9 (50) and 16.6 (2). Values from memory, recomputed: 31.67 nm, 16.8.
  const components = [
    [25, 18],
    [5.8, 24],
    [3.9, 5],
    [6.7, 8],
    [2.9, 50],
    [16.6, 2],
  ].map(([u, degrees]) => part('student', u!, degrees!));
  const { budget } = budgeted(50_000_838, components);
  expect(Math.abs(budget.combinedStandardUncertainty - 31.67)).toBeLessThan(0.01);
  expect(Math.floor(effectiveDegreesOfFreedom(components))).toBe(16);
  expect(Math.abs(budget.effectiveDegreesOfFreedom - 16.8)).toBeLessThan(0.1);
});

test('JCGM 100:2008, H.2 (simultaneous resistance and reactance): means, deviations and combination', () => {
  // Five sets of V, I and phase (values from memory; printed results seen beside them). Uncorrelated parts
  // here: the arithmetic of means and of u = s/√n that every type A component rests on.
  const sets = {
    v: [5.007, 4.994, 5.005, 4.99, 4.999],
    i: [19.663, 19.639, 19.64, 19.685, 19.678],
    phase: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
  };
  const meanOf = (x: number[]): number => x.reduce((sum, value) => sum + value / x.length, 0);
  const deviationOfMean = (x: number[]): number =>
    Math.sqrt(x.reduce((sum, value) => sum + (value - meanOf(x)) ** 2, 0) / (x.length - 1) / x.length);
  expect(meanOf(sets.v).toFixed(4)).toBe('4.9990');
  expect(meanOf(sets.i).toFixed(4)).toBe('19.6610');
  expect(meanOf(sets.phase).toFixed(5)).toBe('1.04446');
  const [u, w, p] = [deviationOfMean(sets.v), deviationOfMean(sets.i), deviationOfMean(sets.phase)];
  expect([u.toFixed(4), w.toFixed(4), p.toFixed(5)]).toEqual(['0.0032', '0.0095', '0.00075']);
  // Z = V/I: with the correlation of −0.355 of V and I its u is 0.236 ohm, as printed; V and I alone give less.
  const z = meanOf(sets.v) / (meanOf(sets.i) / 1000);
  expect(z.toFixed(2)).toBe('254.26');
  const alone = budgeted(z, [
    scatter('V', u, 'V', z / meanOf(sets.v)),
    scatter('I', w, 'mA', z / meanOf(sets.i)),
  ]);
  const correlated = Math.sqrt(
    alone.budget.combinedStandardUncertainty ** 2 +
      (2 * 0.3553 * z * z * u * w) / meanOf(sets.v) / meanOf(sets.i),
  );
  expect(Math.abs(correlated - 0.236)).toBeLessThan(0.001);
});

test('budgeted(value, components) lists them largest first and drops those of nothing', () => {
  const { uncertainty, budget } = budgeted(120, [
    within('gain', 3, '%', 1.2),
    scatter('noise', 0.1, 'V'),
    within('nothing', 0, 'V', 1),
  ]);
  expect(budget.components.map(({ source }) => source)).toEqual(['gain', 'noise']);
  // One rectangle rules: 0.9545·√3 = 1.653.
  expect(Math.abs(budget.coverageFactor - 1.653)).toBeLessThan(0.01);
  expect(Math.abs(uncertainty / budget.combinedStandardUncertainty - budget.coverageFactor)).toBeLessThan(
    1e-12,
  );
  expect(budgeted(1, []).uncertainty).toBe(0);
});

test('an influence felt twice is one influence: its sensitivities add with their signs', () => {
  const twice = budgeted(1, [within('offset', 1, 'V', 0.5), within('offset', 1, 'V', -0.2)]);
  expect(twice.budget.components.length).toBe(1);
  expect(Math.abs(twice.budget.components[0]!.sensitivity - 0.3)).toBeLessThan(1e-15);
});

test('roundingLeft(step, noise): half a step without noise, 0.7 % of it at half a step of noise', () => {
  const seen = (dither: number, step: number): number => Math.hypot(dither, step / Math.sqrt(12));
  expect(roundingLeft(2, 0)).toBe(1);
  // hypot may leave the last bit of q²/12 standing.
  expect(Math.abs(roundingLeft(2, seen(0, 2)) - 1)).toBeLessThan(1e-14);
  expect(Math.abs(roundingLeft(2, seen(1, 2)) - Math.exp(-(Math.PI ** 2) / 2))).toBeLessThan(1e-15);
  expect(roundingLeft(null, 1)).toBe(0);
  // By brute force: the mean error of rounding a level at every position, with noise integrated out.
  const dither = 0.3;
  let worst = 0;
  for (let level = -0.5; level < 0.5; level += 0.01) {
    let mean = 0;
    for (let z = -5; z < 5; z += 0.002) {
      mean += (Math.round(level + dither * z) - level) * Math.exp((-z * z) / 2) * 0.002;
    }
    worst = Math.max(worst, Math.abs(mean) / Math.sqrt(2 * Math.PI));
  }
  // The error's first harmonic is q/π at its largest, and the sawtooth q/2: the bound is on the safe side.
  expect(worst).toBeLessThan(roundingLeft(1, seen(dither, 1)));
  expect(worst).toBeGreaterThan(0.6 * roundingLeft(1, seen(dither, 1)));
});
