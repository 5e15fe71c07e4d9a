import { expect, test } from 'vitest';
import { stampedTimeBase } from '../../../src/read/time/stampedTimeBase.ts';
import { leastSquaresLine } from '../../../src/read/time/stampLine.ts';

const lineOfRow = (row: number): number => row + 2;
const stamps = (count: number, stamp: (row: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, row) => stamp(row));

test('leastSquaresLine(stamps) is the line of normal equations, stamps that are missing aside', () => {
  // Stamps 1, 2, 2, 4 at rows 0, 1, 2, 4: means 7/4 and 9/4; slope Σ(r−r̄)(s−s̄)/Σ(r−r̄)² = 6.25/8.75.
  const line = leastSquaresLine(Float64Array.of(1, 2, 2, Number.NaN, 4));
  const slope = 6.25 / 8.75;
  // A handful of additions of small numbers.
  expect(Math.abs(line.interval - slope)).toBeLessThan(1e-15);
  expect(Math.abs(line.start - (9 / 4 - (7 / 4) * slope))).toBeLessThan(1e-15);
});

test('stampedTimeBase(stamps, …) takes the interval from end to end where stamps are even', () => {
  const base = stampedTimeBase(
    stamps(1001, (row) => 5 + row / 1024),
    1e-9,
    lineOfRow,
  );
  expect(base).toEqual({
    startS: 5,
    intervalS: 1 / 1024,
    sampleCount: 1001,
    arrangement: { kind: 'as read' },
    isCoarse: false,
  });
});

test('stampedTimeBase(stamps, …) never takes the first step, be it zero, one tick or two', () => {
  for (const intervalTicks of [0.02, 0.3, 1.25, 1.6, 1.98, 2.5]) {
    for (const phase of [0, 0.37, 0.9]) {
      const base = stampedTimeBase(
        stamps(2000, (row) => Math.floor(phase + row * intervalTicks)),
        1,
        lineOfRow,
      );
      expect(base.arrangement.kind).toBe('as read');
      // Cut to whole ticks, the fitted slope of N rows is off by less than one tick in N.
      expect(Math.abs(base.intervalS - intervalTicks)).toBeLessThan(1 / 2000);
      expect(base.isCoarse).toBe(intervalTicks < 2);
    }
  }
});

test('stampedTimeBase(stamps, …) leaves places for rows that are missing', () => {
  const rows = [...Array(100).keys()].filter((row) => row !== 40 && row !== 41 && row !== 70);
  const base = stampedTimeBase(
    Float64Array.from(rows, (row) => row / 8),
    1e-6,
    lineOfRow,
  );
  expect(base.intervalS).toBe(1 / 8);
  expect(base.sampleCount).toBe(100);
  if (base.arrangement.kind !== 'placed') throw new Error(base.arrangement.kind);
  const { rowOfSample } = base.arrangement;
  expect([...rowOfSample.keys()].filter((sample) => rowOfSample[sample] === -1)).toEqual([40, 41, 70]);
  expect(rowOfSample[99]).toBe(rows.length - 1);
});

test('stampedTimeBase(stamps, …) hands uneven times on to be resampled', () => {
  const base = stampedTimeBase(
    stamps(500, (row) => row ** 1.3),
    1e-6,
    lineOfRow,
  );
  expect(base.arrangement.kind).toBe('resampled');
  expect(base.startS).toBe(0);
  // Ends meet but for one rounding.
  expect(Math.abs(base.intervalS * (base.sampleCount - 1) - 499 ** 1.3)).toBeLessThan(1e-11);
});

test('stampedTimeBase(stamps, …) refuses a time that stands still, or none', () => {
  for (const still of [stamps(50, () => 3), stamps(50, () => Number.NaN)]) {
    expect(() => stampedTimeBase(still, 1, lineOfRow)).toThrow(
      expect.objectContaining({ code: 'time.still' }),
    );
  }
});

test('coarse stamps cut towards zero give the mean interval, though the cut turns over at zero', () => {
  const cut = stamps(2000, (row) => Math.trunc(((row - 500) * 0.00004) / 0.0001) / 10_000);
  const { intervalS, isCoarse } = stampedTimeBase(cut, 0.0001, lineOfRow);
  // One tick over the 1999 intervals of the record.
  expect(Math.abs(intervalS - 0.00004)).toBeLessThan(0.0001 / 1999);
  expect(isCoarse).toBe(true);
});
