import { expect, test } from 'vitest';
import { nearestSample, waveColumns } from '../../../src/page/wave/waveColumns.ts';

const samples = Float64Array.of(5, 1, Number.NaN, 3);
const at = (atS: number): number | null =>
  nearestSample(waveColumns({ startS: 10, intervalS: 1, samples }, atS - 1, atS + 1, 8), atS);

test('nearestSample(columns, at) is the file’s own value, null where it holds none', () => {
  expect(at(10.2)).toBe(5);
  expect(at(10.6)).toBe(1);
  expect(at(12.1)).toBeNull();
  expect(at(13)).toBe(3);
  expect(at(20)).toBeNull();
});
