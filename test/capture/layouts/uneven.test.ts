import { expect, test } from 'vitest';
import { readCapture } from '../../../src/capture/readCapture.ts';
import { bytesOf } from './layoutCase.ts';
import { lines, rows } from './wave.ts';

const wave = (timeS: number): number => 325 * Math.sin(2 * Math.PI * 50 * timeS);
/** 100 µs on average, ±40 µs: a logger with a clock that wanders. */
const times = rows(1000).map((i) => i * 1e-4 + 4e-5 * Math.sin(i * 1.7));
const file = (samples: readonly number[]): Uint8Array =>
  bytesOf(
    lines(['Time (s),Outlet (V)', ...times.map((t, i) => `${t.toFixed(9)},${samples[i]!.toFixed(4)}`)]),
  );

test('a wave sampled densely at uneven times is laid on even steps, and a notice says so', () => {
  const capture = readCapture(file(times.map(wave)));
  expect(capture.notices.map((notice) => notice.code)).toEqual(['time.uneven']);
  const [channel] = capture.channels;
  // A chord misses a sine by at most (ω h)² / 8 of its peak; h is at most 180 µs here.
  const chordV = (325 * (2 * Math.PI * 50 * 1.8e-4) ** 2) / 8;
  channel.samples.forEach((sample, i) => {
    expect(Math.abs(sample - wave(capture.startS + i * capture.intervalS))).toBeLessThanOrEqual(
      chordV + 1e-4,
    );
  });
});

test('resampling keeps both ends of the record', () => {
  const capture = readCapture(file(times.map(wave)));
  expect(capture.startS).toBe(Number(times[0]!.toFixed(9)));
  const endS = capture.startS + (capture.sampleCount - 1) * capture.intervalS;
  expect(Math.abs(endS - Number(times.at(-1)!.toFixed(9)))).toBeLessThan(1e-15);
});

test('steep edges at uneven times are refused', () => {
  const square = times.map((t) => (Math.sin(2 * Math.PI * 50 * t) >= 0 ? 170 : -170));
  expect(() => readCapture(file(square))).toThrow(expect.objectContaining({ code: 'time.uneven' }));
});
