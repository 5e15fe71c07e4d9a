import { expect, test } from 'vitest';
import { columnExtremes } from '../../src/draw/columnExtremes.ts';
import { roundedTo } from '../../src/publish/evidence/captureEvidence.ts';

const x = Float64Array.from({ length: 100_000 }, (_, i) => i / 1000);

test('every column keeps its first, last, lowest and highest sample, so that no spike is lost', () => {
  const y = x.map((t) => Math.sin(t));
  y[31_415] = 9;
  y[31_416] = -9;
  const kept = columnExtremes(x, [y], 50);
  expect(kept.length).toBeLessThanOrEqual(50 * 4 + 4);
  expect(kept).toEqual([...kept].sort((a, b) => a - b));
  for (const index of [0, 31_415, 31_416, 99_999]) expect(kept).toContain(index);
  // Each column's extremes, found the slow way.
  const width = x.at(-1)! / 50;
  for (let column = 0; column < 50; column++) {
    const inside = [...x.keys()].filter((i) => Math.floor(x[i]! / width) === column);
    const highest = Math.max(...inside.map((i) => y[i]!));
    const ofKept = kept.filter((i) => Math.floor(x[i]! / width) === column).map((i) => y[i]!);
    expect(Math.max(...ofKept)).toBe(highest);
  }
});

test('the extremes of every curve are kept, and a gap is passed over', () => {
  const flat = new Float64Array(x.length);
  const spiked = new Float64Array(x.length);
  spiked[777] = 5;
  flat.fill(Number.NaN, 5000, 9000);
  expect(columnExtremes(x, [flat, spiked], 20)).toContain(777);
});

test('few samples are kept whole', () => {
  expect(columnExtremes([0, 1, 2], [[5, 6, 7]], 10)).toEqual([0, 1, 2]);
  expect(columnExtremes([], [[]], 10)).toEqual([]);
});

test('rounding leaves the picture: no value moves by more than a hundred-thousandth of the range', () => {
  for (const range of [1e-6, 0.3, 325, 1e7]) {
    const values = Float64Array.from({ length: 1000 }, (_, i) => range * Math.sin(i));
    roundedTo(values, 5).forEach((value, i) => {
      expect(Math.abs(value - values[i]!)).toBeLessThanOrEqual(range * 1e-5);
    });
  }
  expect(roundedTo([1, Number.NaN, 2], 3)).toEqual([1, Number.NaN, 2]);
  expect(roundedTo([0.1 + 0.2, 0.1 + 0.2], 3)).toEqual([0.3, 0.3]);
});
