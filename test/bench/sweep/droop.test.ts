import { expect, test } from 'vitest';
import { droop } from '../../../src/bench/sweep/droop.ts';
import { point } from '../benchPoints.ts';

/** A source of 120 V behind an impedance, at a current. */
const behind = (ohms: number, amperes: number) => {
  const rmsV = 120 - ohms * amperes;
  return point(rmsV * amperes, rmsV, {
    currentA: { value: amperes, uncertainty: 0 },
    currentFrom: 'measured',
  });
};

test('a source behind 0.8 Ω is found to be one', () => {
  const points = [0, 1, 3, 5].map((amperes) => behind(0.8, amperes));
  const { outputImpedanceOhm, openCircuitV, droopPercent, fittedLoadsW, misfit } = droop(points, null);
  // Rounding only.
  expect(Math.abs(outputImpedanceOhm.value! - 0.8)).toBeLessThan(1e-12);
  expect(Math.abs(openCircuitV.value! - 120)).toBeLessThan(1e-12);
  expect(Math.abs(droopPercent.value! - (100 * 4) / 120)).toBeLessThan(1e-12);
  expect(fittedLoadsW).toHaveLength(4);
  expect(misfit).toBeLessThan(1e-9);
});

test('two points: the uncertainty of the slope is theirs over the current, with the gain as a factor', () => {
  const { outputImpedanceOhm, misfit } = droop([behind(0.8, 0), behind(0.8, 5)], null);
  if (outputImpedanceOhm.value === null) throw new Error(JSON.stringify(outputImpedanceOhm.reason));
  const slope = Math.hypot(0.02, 0.02) / 5;
  const gain = (0.8 * Math.sqrt(4 ** 2 - 0.02 ** 2)) / 116;
  expect(Math.abs(outputImpedanceOhm.uncertainty - Math.hypot(slope, gain))).toBeLessThan(1e-9);
  expect(misfit).toBe(null);
});

test('points that lie off a line by more than their noise widen the uncertainty', () => {
  const straight = [0, 1, 3, 5].map((amperes) => behind(0.8, amperes));
  const bent = straight.map((one, i) => ({
    ...one,
    rmsV: { value: one.rmsV.value! + [0, 1, 1, 0][i]!, uncertainty: 4 },
  }));
  const [of, off] = [droop(straight, null), droop(bent, null)].map(({ droopPercent }) => droopPercent);
  if (of?.value == null || off?.value == null) throw new Error('no droop');
  // 1 V beside 0.01 V of standard uncertainty.
  expect(off.uncertainty).toBeGreaterThan(20 * of.uncertainty);
});

test('overload and flattened tops are left out; one point is no line', () => {
  const points = [behind(0.8, 0), behind(0.8, 2), point(600, 100), point(900, 90, { overload: true })];
  expect(droop(points, 600).fittedLoadsW).toEqual([0, 2 * 118.4]);
  expect(droop([point(0, 120)], null).outputImpedanceOhm.value).toBe(null);
});
