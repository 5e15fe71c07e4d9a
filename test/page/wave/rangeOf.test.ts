import { expect, test } from 'vitest';
import { rangeOf } from '../../../src/page/wave/waveColumns.ts';

const columns = (low: readonly number[], high: readonly number[]) => ({
  timeS: Float64Array.from(low, (_, i) => i),
  low: Float64Array.from(low),
  high: Float64Array.from(high),
});

test('rangeOf(columns) leaves a little room about the extremes, whatever holds no value', () => {
  const [bottom, top] = rangeOf(columns([-100, Number.NaN, -50], [0, Number.NaN, 100]));
  expect(Math.abs(bottom - -112)).toBeLessThan(5e-10);
  expect(Math.abs(top - 112)).toBeLessThan(5e-10);
});

test('a level line and nothing at all have a range too', () => {
  expect(rangeOf(columns([5, 5], [5, 5]))).toEqual([4, 6]);
  expect(rangeOf(columns([Number.NaN], [Number.NaN]))).toEqual([-1, 1]);
});
