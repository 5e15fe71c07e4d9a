import { expect, test } from 'vitest';
import { readCapture } from '../../src/read/readCapture.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test('readCapture(bytes) reads a comma file with a header row and a time column', () => {
  const rows = Array.from(
    { length: 100 },
    (_, i) => `${(i * 2e-4).toFixed(4)},${(325 * Math.sin(i / 16)).toFixed(2)}`,
  );
  const capture = readCapture(bytes(`Time (s),Outlet (V)\n${rows.join('\n')}\n`));
  expect(capture.sampleCount).toBe(100);
  expect(capture.startS).toBe(0);
  // The last stamp is printed as 0.0198 and divided by 99 steps: one rounding.
  expect(Math.abs(capture.intervalS - 2e-4)).toBeLessThan(1e-18);
  expect(capture.layout).toBe('comma, 1 header row, time in s, 1 channel in V');
  const [channel] = capture.channels;
  expect(channel.name).toBe('Outlet');
  expect(channel.samples[16]).toBe(Number((325 * Math.sin(1)).toFixed(2)));
  expect(capture.notices).toEqual([]);
});

test('readCapture(bytes, options) refuses a sample rate that is none', () => {
  expect(() => readCapture(bytes('1\n2\n'), { sampleRateHz: 0 })).toThrow(RangeError);
});
