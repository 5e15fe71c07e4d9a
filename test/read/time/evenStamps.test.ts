import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countsUp, risesEvenly } from '../../../src/read/columns/columnTrend.ts';
import { evenStamps, isEven, lineThroughEnds, stampRun } from '../../../src/read/time/stampLine.ts';

/** Stamps of some interval that stray, are missing, or are printed to some digits. */
const column = fc
  .record({
    count: fc.integer({ min: 16, max: 400 }),
    start: fc.constantFrom(0, 1, -0.5, 1e3, 1e15),
    interval: fc.constantFrom(1, 1e-6, 2e-3, -1, 0),
    strays: fc.constantFrom(0, 0, 0.02, 0.06, 0.12, 3),
    missing: fc.constantFrom(0, 0, 0.01, 0.05, 1),
    noise: fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
    length: fc.integer({ min: 1, max: 100 }),
  })
  .map(({ count, start, interval, strays, missing, noise, length }) => {
    const stamps = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      const isMissing = Math.abs(noise.next().value) < missing;
      const off = strays === 0 ? 0 : strays * interval * noise.next().value;
      stamps[i] = isMissing ? Number.NaN : start + i * interval + off;
    }
    const runs = [];
    for (let from = 0; from < count; from += length)
      runs.push(stampRun(stamps.subarray(from, from + length)));
    return { stamps, runs };
  });

test('evenStamps(runs) is sure only of what all stamps together show, bit for bit', () => {
  let sure = 0;
  fc.assert(
    fc.property(column, ({ stamps, runs }) => {
      const even = evenStamps(runs);
      if (even === null) return;
      sure++;
      const line = lineThroughEnds(stamps)!;
      expect(even.line).toStrictEqual(line);
      expect(isEven(stamps, line)).toBe(true);
      expect(even.countsUp()).toBe(countsUp(stamps));
      expect(even.risesEvenly()).toBe(risesEvenly(stamps));
    }),
    { numRuns: 2000 },
  );
  // Half of the columns are even or nearly so.
  expect(sure).toBeGreaterThan(300);
});

test('evenStamps(runs) is sure of stamps printed to a hundredth of their interval', () => {
  const stamps = Float64Array.from({ length: 5000 }, (_, i) => Number((i / 7 - 3).toFixed(3)));
  const runs = [0, 1, 2, 3, 4].map((k) => stampRun(stamps.subarray(1000 * k, 1000 * (k + 1))));
  expect(evenStamps(runs)?.line).toEqual(lineThroughEnds(stamps));
});
