import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keptSpan, movedSpan, type SpanLimits, zoomedSpan } from '../../../src/page/wave/waveColumns.ts';

const limits: SpanLimits = { record: [-1, 3], shortestS: 0.1 };

test('keptSpan moves a stretch into the record, cuts what is longer, widens what is too short about its middle', () => {
  expect(keptSpan([-3, -2], limits)).toEqual([-1, 0]);
  expect(keptSpan([2.5, 4.5], limits)).toEqual([1, 3]);
  expect(keptSpan([-9, 9], limits)).toEqual([-1, 3]);
  const [from, to] = keptSpan([1, 1], limits);
  expect([from, to - from]).toEqual([expect.closeTo(0.95, 12), expect.closeTo(0.1, 12)]);
});

test('zoomedSpan keeps the time pointed at where it is', () => {
  expect(zoomedSpan([0, 2], 0.5, 0.5, limits)).toEqual([0.25, 1.25]);
  expect(zoomedSpan([0, 2], 100, 1, limits)).toEqual([-1, 3]);
});

test('movedSpan moves by a share of the length, to the record’s end at most', () => {
  expect(movedSpan([0, 1], 0.25, limits)).toEqual([0.25, 1.25]);
  expect(movedSpan([0, 1], -5, limits)).toEqual([-1, 0]);
});

test('whatever is done, the stretch stays within the record and is no shorter than the shortest', () => {
  const time = fc.double({ min: -10, max: 10, noNaN: true });
  fc.assert(
    fc.property(time, time, fc.double({ min: 0.01, max: 100, noNaN: true }), time, (a, b, factor, about) => {
      const kept = keptSpan([Math.min(a, b), Math.max(a, b)], limits);
      for (const [from, to] of [
        kept,
        zoomedSpan(kept, factor, about, limits),
        movedSpan(kept, factor, limits),
      ]) {
        expect(from).toBeGreaterThanOrEqual(-1 - 1e-12);
        expect(to).toBeLessThanOrEqual(3 + 1e-12);
        expect(to - from).toBeGreaterThanOrEqual(0.1 - 1e-12);
      }
    }),
  );
});
