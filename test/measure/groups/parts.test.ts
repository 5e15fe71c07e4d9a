import { expect, test } from 'vitest';
import { orderGroups, partialWeightedDistortion } from '../../../src/measure/groups/groupFigures.ts';
import { cyclesPerWindow, smoothed } from '../../../src/measure/groups/harmonicGroups.ts';

test('smoothed(values, windowS): α and β as IEC 61000-4-7 prints them (from memory)', () => {
  // From y[0] = 0, an input of α comes out as 1; then with input 0 as β/α.
  for (const [windowS, alpha, beta] of [
    [0.2, 8.012, 7.012],
    [16 / 50, 5.206, 4.206],
    [16 / 60, 6.14, 5.14],
  ] as const) {
    const [, first, second] = smoothed([0, 1, 0], windowS);
    // The printed last digit is off by one: 1e-3.
    expect(Math.abs(1 / first! - alpha)).toBeLessThan(1.01e-3);
    expect(Math.abs(second! / first! - beta / alpha)).toBeLessThan(1e-3);
  }
});

test('smoothed(values, windowS) of a steady value is that value, of a step 1 − e^(−t/τ)', () => {
  expect(smoothed([3, 3, 3], 0.2)).toEqual([3, 3, 3]);
  const step = smoothed([0, ...Array(10).fill(1)], 0.2);
  expect(Math.abs(step[10]! - (1 - Math.exp(-2 / 1.5)))).toBeLessThan(1e-12);
  expect(smoothed([], 0.2)).toEqual([]);
});

test('the measured frequency chooses the window, the nominal where both ranges hold it', () => {
  expect(cyclesPerWindow(50.02, null)).toEqual({ cycles: 10, provided: true });
  expect(cyclesPerWindow(59.9, 50)).toEqual({ cycles: 12, provided: true });
  expect(cyclesPerWindow(56, 50)).toEqual({ cycles: 10, provided: true });
  expect(cyclesPerWindow(54, 60)).toEqual({ cycles: 12, provided: true });
  expect(cyclesPerWindow(9.6, null)).toEqual({ cycles: 10, provided: false });
  expect(cyclesPerWindow(400, 400)).toEqual({ cycles: 12, provided: false });
});

test('partial weighted distortion: √Σ h·(Yh/Y1)² of orders 14 to 40 by hand', () => {
  const squares = new Float64Array(10 * 41);
  squares[10] = 100 ** 2;
  squares[130] = 9 ** 2;
  squares[140] = 2 ** 2;
  squares[400] = 1;
  // Order 13 lies outside: √(14·4 + 40·1) / 100.
  const distortion = partialWeightedDistortion(orderGroups(squares, 10, 40))!;
  expect(Math.abs(distortion - Math.sqrt(96) / 100)).toBeLessThan(1e-15);
  expect(partialWeightedDistortion(orderGroups(squares, 10, 39))).toBe(null);
});

test('groups share the half-way lines, so that they add up to all lines; too few lines are a mistake', () => {
  const squares = new Float64Array(12 * 6).fill(1);
  const [, second] = orderGroups(squares, 12, 5);
  // k = −5 … 5 and half of ± 6: twelve lines, one group's width.
  expect(Math.abs(second!.groupRms ** 2 - 12)).toBeLessThan(1e-12);
  expect(Math.abs(second!.interharmonicGroupRms ** 2 - 11)).toBeLessThan(1e-12);
  expect(Math.abs(second!.interharmonicSubgroupRms ** 2 - 9)).toBeLessThan(1e-12);
  expect(() => orderGroups(squares, 12, 6)).toThrow(RangeError);
});
