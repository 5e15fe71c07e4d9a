import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type WaveRecord, waveColumns } from '../../../src/page/wave/waveColumns.ts';

const record = (samples: readonly number[], startS = 0, intervalS = 1): WaveRecord => ({
  startS,
  intervalS,
  samples: Float64Array.from(samples),
});

test('waveColumns(record, from, to, count) gives few samples as they are, with their neighbours', () => {
  const { timeS, low, high } = waveColumns(record([5, 1, Number.NaN, 3, 4, 2], 10, 0.5), 10.6, 11.4, 100);
  expect([...timeS]).toEqual([10.5, 11, 11.5]);
  expect([...low]).toEqual([1, Number.NaN, 3]);
  expect([...high]).toEqual([...low]);
});

test('of many samples each column gives its lowest and its highest', () => {
  const { timeS, low, high } = waveColumns(record([3, 1, 2, 6, 5, 4, 9, 8, 7, 0, 0, 1]), 0, 12, 4);
  expect([...timeS]).toEqual([1.5, 4.5, 7.5, 10.5]);
  expect([...low]).toEqual([1, 4, 7, 0]);
  expect([...high]).toEqual([3, 6, 9, 1]);
});

test('a stretch outside of the record holds nothing', () => {
  for (const [from, to] of [
    [-9, -5],
    [50, 60],
  ] as const) {
    const { low } = waveColumns(record([1, 2, 3]), from, to, 1);
    expect([...low].filter((value) => !Number.isNaN(value))).toEqual([]);
  }
});

const values = fc.array(
  fc.oneof({ weight: 8, arbitrary: fc.integer({ min: -1000, max: 1000 }) }, fc.constant(Number.NaN)),
  { minLength: 1, maxLength: 400 },
);

test('no sample of the stretch is left out, none from elsewhere is shown, none stands in a far column', () => {
  fc.assert(
    fc.property(
      ...[values, fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true })],
      ...[fc.integer({ min: 1, max: 90 }), fc.integer({ min: -5, max: 5 })],
      (samples, where, length, count, startS) => {
        const intervalS = 0.25;
        const spanS = samples.length * intervalS;
        const fromS = startS + where * spanS * (1 - length);
        const toS = fromS + length * spanS;
        const shown = waveColumns(record(samples, startS, intervalS), fromS, toS, count);
        expect(shown.low.length).toBe(shown.timeS.length);
        const widthS = (toS - fromS) / count;
        const first = Math.max(0, Math.floor((fromS - startS) / intervalS));
        const last = Math.min(samples.length - 1, Math.ceil((toS - startS) / intervalS));
        const within = samples.slice(first, last + 1).filter((value) => !Number.isNaN(value));
        const lows = [...shown.low].filter((value) => !Number.isNaN(value));
        const highs = [...shown.high].filter((value) => !Number.isNaN(value));
        // The twin: the stretch's extremes, by hand.
        expect(lows.length > 0 ? Math.min(...lows) : null).toBe(
          within.length > 0 ? Math.min(...within) : null,
        );
        expect(highs.length > 0 ? Math.max(...highs) : null).toBe(
          within.length > 0 ? Math.max(...within) : null,
        );
        // Each extreme is a sample at most a column and an interval away.
        for (const ends of [shown.low, shown.high]) {
          ends.forEach((value, i) => {
            if (Number.isNaN(value)) return;
            const near = samples.some(
              (sample, n) =>
                sample === value &&
                Math.abs(startS + n * intervalS - shown.timeS[i]!) <= widthS / 2 + intervalS + 1e-9,
            );
            expect(near).toBe(true);
          });
        }
      },
    ),
  );
});
