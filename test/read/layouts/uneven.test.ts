import { expect, test } from 'vitest';
import { readCapture } from '../../../src/read/readCapture.ts';
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

test('the unit of uneven times changes nothing', () => {
  const samples = times.map(wave);
  const inMs = bytesOf(
    lines([
      'Time (ms),Outlet (V)',
      ...times.map((t, i) => `${(t * 1e3).toFixed(6)},${samples[i]!.toFixed(4)}`),
    ]),
  );
  const [inSeconds, inMilliseconds] = [readCapture(file(samples)), readCapture(inMs)];
  // The same digits, the mark three places on: a rounding at each of the ends, of 0.1 s.
  expect(Math.abs(inMilliseconds.intervalS / inSeconds.intervalS - 1)).toBeLessThan(1e-14);
  inSeconds.channels[0].samples.forEach((sample, i) => {
    // A time off by 1e-16 s moves a wave of 1e5 V/s by 1e-11 V.
    expect(Math.abs(inMilliseconds.channels[0].samples[i]! - sample)).toBeLessThan(1e-10);
  });
});

test('steep edges at uneven times are refused', () => {
  const square = times.map((t) => (Math.sin(2 * Math.PI * 50 * t) >= 0 ? 170 : -170));
  expect(() => readCapture(file(square))).toThrow(expect.objectContaining({ code: 'time.uneven' }));
});

test('rows kept only where the value changed are held, not joined by lines: plateaus stay flat', () => {
  const clipped = rows(1500).map(
    // Plus 0, since a printed −0 is read as 0.
    (i) => 0 + 4 * Math.round(Math.max(-75, Math.min(75, 100 * Math.sin((2 * Math.PI * i) / 500)))),
  );
  const kept = rows(1500).filter((i) => i === 0 || clipped[i] !== clipped[i - 1]);
  expect(kept.length).toBeLessThan(900);
  const capture = readCapture(
    bytesOf(lines(['Time (s),Outlet (V)', ...kept.map((i) => `${(i * 4e-5).toFixed(5)},${clipped[i]}`)])),
  );
  expect(capture.notices).toEqual([{ code: 'time.uneven', rows: 'kept on change' }]);
  // What the wave did after its last change is not in the file.
  expect(Array.from(capture.channels[0].samples)).toEqual(clipped.slice(0, kept.at(-1)! + 1));
  expect(capture.channels[0].gaps).toEqual([]);
  // Fifteen digits of a double.
  expect(Math.abs(capture.intervalS / 4e-5 - 1)).toBeLessThan(1e-12);
});

test('rows lost where the wave went on are gaps, though no row repeats another', () => {
  const lost = new Set([40, 41, 42, 43, 120, 121, 122, 123, 240, 241, 242, 243]);
  const left = rows(400).filter((i) => !lost.has(i));
  const capture = readCapture(
    bytesOf(
      lines([
        'Time (s),Outlet (V)',
        ...left.map((i) => `${(i * 1e-4).toFixed(4)},${wave(i * 1e-4 + 1e-5).toFixed(3)}`),
      ]),
    ),
  );
  expect(capture.notices.map((notice) => notice.code)).toEqual(['gaps.found']);
  expect(capture.channels[0].gaps).toEqual([
    { from: 40, to: 44 },
    { from: 120, to: 124 },
    { from: 240, to: 244 },
  ]);
});
