import { expect, test } from 'vitest';
import { readCapture } from '../../../src/capture/readCapture.ts';
import { assayCapture } from '../../../src/verdict/assayCapture.ts';

/** A sine of 50 Hz in rows of a time rounded to a tick and a voltage of three decimals. */
function text(intervalS: number, count: number, decimals: number, head = 'time (s),CH1 (V)'): string {
  const row = (n: number): string => {
    const t = n * intervalS;
    return `${t.toFixed(decimals)},${(170 * Math.sin(2 * Math.PI * 50 * t)).toFixed(3)}`;
  };
  return [head, ...Array.from({ length: count }, (_, n) => row(n)), ''].join('\n');
}

const read = (content: string) => readCapture(new TextEncoder().encode(content));

test('stamps coarser than the samples leave the interval in doubt, and the frequency with it', () => {
  // 1,400 samples of 43 µs, printed to 0.1 ms: a twentieth of a tick over 60 ms is 83 millionths.
  const coarse = read(text(43e-6, 1400, 4));
  // The interval is itself known to that share only.
  expect(Math.abs(coarse.intervalWithin! / ((0.05 * 1e-4) / (1400 * 43e-6)) - 1)).toBeLessThan(1e-3);
  expect(Math.abs(coarse.intervalS / 43e-6 - 1)).toBeLessThan(coarse.intervalWithin!);
  const fine = read(text(43e-6, 1400, 7));
  expect(fine.intervalWithin).toBeUndefined();

  const source = { file: 'a.csv', sha256: '0'.repeat(64) };
  const doubt = (capture: typeof coarse): number => {
    const { frequencyHz } = assayCapture(capture, source, {})[0]!.result.voltage!;
    if (frequencyHz.value === null) throw new Error(frequencyHz.reason);
    expect(Math.abs(frequencyHz.value - 50)).toBeLessThan(frequencyHz.uncertainty);
    return frequencyHz.uncertainty;
  };
  // 50 Hz · 83e-6, rectangular: at least 0.95 of that; the time base alone is 2.5 mHz.
  expect(doubt(coarse)).toBeGreaterThan(0.95 * 50 * 83e-6);
  expect(doubt(fine)).toBeLessThan(0.003);
});
