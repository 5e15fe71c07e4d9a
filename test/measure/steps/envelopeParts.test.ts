import { expect, test } from 'vitest';
import { changes, straightScatter } from '../../../src/measure/steps/changes.ts';
import { settledStretch } from '../../../src/measure/steps/envelopeMoves.ts';
import { farthest } from '../../../src/measure/steps/frequencyFigures.ts';
import { settlingIndex } from '../../../src/measure/steps/stepFigures.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';

const series = (length: number, at: (k: number) => number): Float64Array =>
  Float64Array.from({ length }, (_, k) => at(k));

test('a jump is a change, a slope however steep is none', () => {
  const jump = changes(
    series(40, (k) => (k < 20 ? 100 : 95)),
    { least: 1 },
  );
  // Its first value is the twentieth; it has passed when the values two cycles apart are alike again.
  expect(jump.changes).toEqual([{ before: 17, last: 23, size: 5 }]);
  expect(
    changes(
      series(40, (k) => 100 - k),
      { least: 1 },
    ).changes,
  ).toEqual([]);
});

/** Urms(1/2) of a sine: a step of the amplitude between two half cycles is straddled by one value. */
const straddled = (before: number, after: number): number => Math.sqrt((before ** 2 + after ** 2) / 2);

test('sharp edges between levels are a change each, down to two cycles apart; a way back belongs to its edge', () => {
  const pulse = (length: number): Float64Array =>
    series(80, (k) =>
      k === 30 || k === 30 + length ? straddled(95, 100) : k > 30 && k < 30 + length ? 95 : 100,
    );
  for (const length of [4, 8, 16, 20]) expect(changes(pulse(length), { least: 1 }).changes.length).toBe(2);
  const back = (cycles: number): Float64Array =>
    series(80, (k) => (k < 30 ? 100 : 100 - 8 * Math.exp(-(k - 30) / 2 / cycles)));
  for (const cycles of [0.5, 1, 2, 4]) expect(changes(back(cycles), { least: 1 }).changes.length).toBe(1);
  const ringing = series(80, (k) =>
    k < 30 ? 100 : 95 - 5 * Math.exp(-(k - 30) / 12) * Math.cos(((k - 30) * Math.PI) / 5),
  );
  expect(changes(ringing, { least: 1 }).changes.length).toBe(1);
});

test('a change up to the least is none, one beyond is', () => {
  const jumpOf = (size: number): number =>
    changes(
      series(40, (k) => (k < 20 ? 100 : 100 + size)),
      { least: 1 },
    ).changes.length;
  expect(jumpOf(1)).toBe(0);
  expect(jumpOf(1.01)).toBe(1);
});

test('the scatter is that of the noise, on a slope and beside a step', () => {
  const noise = gaussianNumbers(randomNumbers(3));
  const values = series(4000, (k) => 100 - 0.01 * k + (k > 3000 ? 10 : 0) + 0.2 * noise());
  // A quartile of 4000 knows its deviation to about 3 %.
  expect(Math.abs(straightScatter(values) / 0.2 - 1)).toBeLessThan(0.1);
  expect(straightScatter(Float64Array.of(1, 2, 3, 4))).toBe(0);
});

test('a stretch is settled from where it enters the band of its own end', () => {
  const values = series(100, (k) => 100 + 10 * Math.exp(-k / 10));
  const { from, settled, mean } = settledStretch(values, 0, 99, 0.2);
  // 10·e^(−k/10) = 0.2 at k = 39.1
  expect(from).toBe(40);
  expect(settled).toBe(true);
  expect(Math.abs(mean - 100)).toBeLessThan(0.2);
  expect(settledStretch(values, 0, 20, 0.2).settled).toBe(false);
});

test('the last exit lies on the line between the last value outside and the next', () => {
  const timeS = Float64Array.of(0, 1, 2, 3, 4);
  const values = Float64Array.of(9, 4, 8, 2, 1);
  expect(settlingIndex(timeS, values, [0, 4], 0, 5)).toEqual({ atS: 2.5, slope: 6 });
  expect(settlingIndex(timeS, values, [0, 4], 0, 10)).toBe(null);
  expect(settlingIndex(timeS, values, [0, 4], 0, 0.5)).toBe('never');
});

test('the farthest value', () => {
  expect(farthest(Float64Array.of(5, 1, 6, 20), [0, 2], 5)).toBe(1);
});
