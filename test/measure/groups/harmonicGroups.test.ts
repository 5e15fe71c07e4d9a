import { expect, test } from 'vitest';
import type { GroupFigures } from '../../../src/measure/groups/groupFigures.ts';
import { harmonicGroups } from '../../../src/measure/groups/harmonicGroups.ts';
import { fitHarmonics } from '../../../src/signal/fitHarmonics.ts';
import type { HarmonicFit } from '../../../src/signal/harmonicFit.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { fitAt, type Tone, toneSum } from './toneSum.ts';

/** RMS of sines on lines k of a window of N cycles; the phases are arbitrary. */
function workedExample(f0: number, cycles: number): readonly Tone[] {
  const line = f0 / cycles;
  return [
    [f0, 230, 0.3],
    [3 * f0, 10, 1],
    [5 * f0, 8, 2],
    [7 * f0, 4, 3],
    [5 * f0 - line, 2, 4],
    [5 * f0 + line, 2, 5],
    [5 * f0 + 2 * line, 3, 6],
    [5.5 * f0, 1, 0.5],
    [2 * f0 + 4 * line, 5, 1.5],
  ];
}

function groups(fit: HarmonicFit, rate: number, nominalFrequencyHz: number | null = null): GroupFigures {
  return harmonicGroups({ intervalS: 1 / rate, fit, nominalFrequencyHz })!;
}

test('the worked example in closed form, 50 and 60 Hz: groups, subgroups, interharmonics and factors', () => {
  for (const [f0, cycles, rate] of [
    [50, 10, 10_000],
    [60, 12, 12_000],
    [60, 12, 25_000],
  ] as const) {
    const samples = toneSum(workedExample(f0, cycles), rate, Math.round((rate * cycles) / f0));
    const { all, cyclesPerWindow, lineSpacingHz } = groups(fitAt(samples, f0, rate), rate);
    expect(cyclesPerWindow).toBe(cycles);
    expect(Math.abs(lineSpacingHz - 5)).toBeLessThan(1e-9);
    const order = (h: number) => all.orders[h - 1]!;
    const [to40, to50] = all.distortion;
    // Squares of the lines by hand: g5² = 8² + 2² + 2² + 3² + ½·1² = 81.5, sg5² = 8² + 2² + 2² = 72, and so on.
    for (const [value, square] of [
      [order(5).rms, 64],
      [order(5).groupRms, 81.5],
      [order(5).subgroupRms, 72],
      [order(6).groupRms, 0.5],
      [order(5).interharmonicSubgroupRms, 10],
      [order(5).interharmonicGroupRms, 14],
      [order(4).interharmonicGroupRms, 4],
      [order(4).interharmonicSubgroupRms, 0],
      [order(2).interharmonicSubgroupRms, 25],
      [order(2).groupRms, 25],
      [order(2).rms, 0],
      [230 * to40!.thdRatio, 180],
      [230 * to40!.thdGroupsRatio, 100 + 81.5 + 0.5 + 16 + 25],
      [230 * to40!.thdSubgroupsRatio, 100 + 72 + 16],
      [230 * to50!.thdRatio, 180],
    ] as const) {
      expect(Math.abs(value - Math.sqrt(square))).toBeLessThan(1e-6);
    }
    // As published with the example: six and eight digits.
    expect(Math.abs(to40!.thdRatio - 0.05833221)).toBeLessThan(5e-9);
    expect(Math.abs(to40!.thdGroupsRatio - 0.06492689)).toBeLessThan(5e-9);
    expect(Math.abs(to40!.thdSubgroupsRatio - 0.05961439)).toBeLessThan(5e-9);
    expect(Math.abs(all.partialWeightedRatio!)).toBeLessThan(1e-6);
  }
});

test('a pure sine 0.1 Hz off a fixed 200 ms window shows false distortion; windows tied to it show none', () => {
  // False values of a window that is not tied: 0.372 and 0.647 % at 50 Hz, 0.310 and 0.538 % at 60 Hz.
  for (const [nominal, falseThd, falseThds] of [
    [50, 0.372, 0.647],
    [60, 0.31, 0.538],
  ] as const) {
    const rate = 12_000;
    const samples = toneSum([[nominal + 0.1, 230]], rate, 2 * 2400 + 40);
    const untied = fitAt(samples.subarray(0, 2400), nominal, rate);
    const fixed = groups(untied, rate).all.distortion[0]!;
    // Values of three digits; the last moves by one with the sample rate, 10 to 100 kS/s (numpy).
    expect(Math.abs(100 * fixed.thdRatio - falseThd)).toBeLessThan(1e-3);
    expect(Math.abs(100 * fixed.thdSubgroupsRatio - falseThds)).toBeLessThan(1e-3);
    const fit = fitHarmonics(samples, { orders: 50, omega: (2 * Math.PI * nominal) / rate })!;
    const tied = groups(fit, rate);
    expect(tied.windows.length).toBe(2);
    for (const { distortion } of tied.windows) {
      // The fit's own rounding: 1e-9 of the fundamental in each order.
      expect(distortion[0]!.thdRatio).toBeLessThan(1e-8);
      expect(distortion[0]!.thdSubgroupsRatio).toBeLessThan(1e-8);
    }
    expect(tied.notices).toEqual([]);
  }
});

test('the frequency fitted beside strong interharmonics is good enough to tie a window to', () => {
  const rate = 10_000;
  const samples = toneSum(workedExample(50, 10), rate, 12_345);
  const fit = fitHarmonics(samples, { orders: 50, omega: (2 * Math.PI * 50.05) / rate })!;
  const { all, windows } = groups(fit, rate);
  expect(windows.length).toBe(6);
  // The standard lets a window be off by 3e-4; interharmonics of 2 % pull the fit of 1.2 s far less. A sine d lines
  // off its line is short by (πd)²/6 and shows πd/(πm) of itself m lines away: 3e-4 · 10 cycles · 8 V.
  expect(Math.abs(fit.omega / ((2 * Math.PI * 50) / rate) - 1)).toBeLessThan(3e-5);
  expect(Math.abs(all.orders[4]!.groupRms - Math.sqrt(81.5))).toBeLessThan(0.01);
  expect(Math.abs(all.orders[2]!.rms - 10)).toBeLessThan(0.01);
});

test('aggregates are roots of means of squares: fifteen windows, and what is smoothed over 1.5 s', () => {
  // A 5th harmonic of 4 V for 15 windows, of 8 V for 16 more.
  const [rate, window] = [10_000, 2000];
  const low = toneSum(
    [
      [50, 230],
      [250, 4],
    ],
    rate,
    15 * window,
  );
  const high = toneSum(
    [
      [50, 230],
      [250, 8],
    ],
    rate,
    16 * window,
  );
  const samples = Float64Array.from([...low, ...high]);
  const { windows, threeSeconds, all, smoothedHighest, extent } = groups(fitAt(samples, 50, rate), rate);
  expect(windows.length).toBe(31);
  // Phase 0 at a window's start: the change falls on a whole cycle, so each window holds one of the two.
  const fifth = (values: { orders: readonly { rms: number }[] }) => values.orders[4]!.rms;
  expect(windows.map((values) => Math.round(1e6 * fifth(values)) / 1e6)).toEqual([
    ...Array(15).fill(4),
    ...Array(16).fill(8),
  ]);
  expect(threeSeconds.length).toBe(2);
  expect(Math.abs(fifth(threeSeconds[0]!) - 4)).toBeLessThan(1e-6);
  expect(Math.abs(fifth(threeSeconds[1]!) - 8)).toBeLessThan(1e-6);
  expect(Math.abs(fifth(all) - Math.sqrt((15 * 16 + 16 * 64) / 31))).toBeLessThan(1e-6);
  // A step of 4 V behind a first-order low-pass, 3.2 s later.
  expect(Math.abs(smoothedHighest![4]!.rms - (8 - 4 * Math.exp(-3.2 / 1.5)))).toBeLessThan(1e-6);
  expect(extent).toBe('31 windows of 10 cycles: 2 values over 150 cycles (3 s); no 10-minute value.');
});

test('white noise: the floor of the distortion of windows is √(2Kσ²/L) / V1', () => {
  const [rate, sigma, amplitude] = [10_000, 2, 325];
  const normal = gaussianNumbers(randomNumbers(5));
  const samples = toneSum([[50, amplitude / Math.SQRT2]], rate, 40 * 2000).map((x) => x + sigma * normal());
  const { windows } = groups(fitAt(samples, 50, rate), rate);
  const meanSquare = windows.reduce((sum, { distortion }) => sum + distortion[0]!.thdRatio ** 2 / 40, 0);
  const floor = Math.sqrt((2 * 39 * sigma ** 2) / 2000) / (amplitude / Math.SQRT2);
  expect(Math.abs(floor - 0.00171868)).toBeLessThan(5e-9);
  // 40 windows of 39 lines: the mean square scatters by 1/√1560 = 2.5 %, its root by half that; four times that.
  expect(Math.abs(Math.sqrt(meanSquare) / floor - 1)).toBeLessThan(0.05);
});

test('too short for a window: nothing; a low rate: fewer orders', () => {
  const short = toneSum([[50, 230]], 10_000, 1990);
  expect(harmonicGroups({ intervalS: 1e-4, fit: fitAt(short, 50, 10_000), nominalFrequencyHz: 50 })).toBe(
    null,
  );
  const coarse = toneSum(
    [
      [50, 230],
      [150, 7],
    ],
    1000,
    220,
  );
  const { all, extent } = groups(fitAt(coarse, 50, 1000, 8), 1000);
  expect(all.orders.length).toBe(9);
  expect(all.distortion.map(({ highestOrder }) => highestOrder)).toEqual([9]);
  expect(all.partialWeightedRatio).toBe(null);
  expect(Math.abs(all.distortion[0]!.thdRatio - 7 / 230)).toBeLessThan(1e-9);
  expect(extent).toBe('One window of 10 cycles: too short for a value over 150 cycles (3 s).');
});

test('a frequency that moves, or that no standard provides for, is said', () => {
  const rate = 10_000;
  // 50 Hz, rising by 0.4 Hz a second: from window to window by 0.08 Hz, 8e-4 of it on either side of the mean.
  const chirp = Float64Array.from({ length: 6100 }, (_, n) => {
    const t = n / rate;
    return 325 * Math.sin(2 * Math.PI * (50 * t + 0.2 * t * t));
  });
  const fit = fitHarmonics(chirp, { orders: 40, omega: (2 * Math.PI * 50) / rate })!;
  expect(groups(fit, rate).notices.map(({ code }) => code)).toEqual(['groups.unsynchronised']);
  const slow = toneSum([[40, 100]], rate, 5000);
  expect(groups(fitAt(slow, 40, rate), rate).notices.map(({ code }) => code)).toEqual(['groups.frequency']);
});
