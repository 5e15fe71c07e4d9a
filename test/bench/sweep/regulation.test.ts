import { expect, test } from 'vitest';
import { regulation } from '../../../src/bench/sweep/regulation.ts';
import { worded } from '../../../src/words/worded.ts';
import { point } from '../benchPoints.ts';

test('120 V without load and 117 V at full load are a regulation of 100 · 3 / 117 = 2.564 %', () => {
  const { regulationPercent, noLoadW, fullLoadW } = regulation([
    point(0, 120),
    point(300, 118.4),
    point(600, 117),
  ]);
  // Two divisions of numbers near one: a few roundings of 2e-16, times a hundred.
  expect(Math.abs(regulationPercent.value! - 300 / 117)).toBeLessThan(1e-12);
  expect([noLoadW, fullLoadW]).toEqual([0, 600]);
});

test('a gain common to both captures cancels: noise and resolution alone are left', () => {
  const { regulationPercent } = regulation([point(0, 120), point(600, 117)]);
  // 0.02 V each, as 95.45 %: 100 / 117 · hypot(0.02, 0.02 · 120 / 117).
  const expected = (100 / 117) * Math.hypot(0.02, (0.02 * 120) / 117);
  if (regulationPercent.value === null) throw new Error(JSON.stringify(regulationPercent.reason));
  expect(Math.abs(regulationPercent.uncertainty - expected)).toBeLessThan(1e-9);
});

test('a voltage that rises with load has a negative regulation', () => {
  expect(regulation([point(0, 117), point(600, 120)]).regulationPercent.value).toBeLessThan(0);
});

test('an overload is no full load', () => {
  expect(regulation([point(0, 120), point(600, 117), point(900, 100, { overload: true })]).fullLoadW).toBe(
    600,
  );
});

test.each([
  ['no capture without load', [point(200, 119), point(600, 117)]],
  ['captures at one load only', [point(600, 117)]],
  ['no capture of a known load', [point(null, 117)]],
])('%s: the reason stands in place of a figure', (reason, points) => {
  expect(worded(regulation(points))).toEqual({
    regulationPercent: { value: null, reason },
    noLoadW: null,
    fullLoadW: null,
  });
});
