import { expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { readCapture } from '../../../src/read/readCapture.ts';

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
  // 1,400 samples of 43.0123 µs, printed to 0.1 ms.
  const coarse = read(text(43.0123e-6, 1400, 4));
  const { least, most } = slopesThatFit(
    Array.from({ length: 1400 }, (_, n) => Number((n * 43.0123e-6).toFixed(4))),
    0.5e-4,
  );
  // Sums of a thousand stamps, and the rounding error that the last step may end short by.
  const within = (most - least) / (most + least);
  expect(Math.abs(coarse.intervalWithin! / within - 1)).toBeLessThan(1e-3);
  expect(Math.abs(coarse.intervalS / ((most + least) / 2) - 1)).toBeLessThan(1e-3 * within);
  expect(Math.abs(coarse.intervalS / 43.0123e-6 - 1)).toBeLessThan(coarse.intervalWithin!);
  const fine = read(text(43.0123e-6, 1400, 7));
  expect(fine.intervalWithin).toBeUndefined();

  const source = { file: 'a.csv', sha256: '0'.repeat(64) };
  const doubt = (capture: typeof coarse): number => {
    const { frequencyHz } = assayCapture(capture, source, {})[0]!.result.voltage!;
    if (frequencyHz.value === null) throw new Error(JSON.stringify(frequencyHz.reason));
    expect(Math.abs(frequencyHz.value - 50)).toBeLessThan(frequencyHz.uncertainty);
    return frequencyHz.uncertainty;
  };
  // The time base alone is 2.5 mHz, less the corners of two distributions.
  expect(doubt(coarse)).toBeGreaterThan(0.95 * 50 * within);
  expect(doubt(fine)).toBeLessThan(0.003);
});

test('where samples and ticks nearly go up into each other, the stamps leave a sample over the record open', () => {
  // 3001.8 samples a second and stamps cut to 1 ms: nearly three rows a tick, and off by 6e-4 of it over the record.
  for (const [rateHz, count, from] of [
    [3001.8, 323, -0.0536],
    [4003.5, 861, -0.1075],
    [4997.1, 813, 0.0007],
  ] as const) {
    const stamps = Array.from({ length: count }, (_, n) => Math.trunc((from + n / rateHz) * 1000) / 1000);
    const rows = stamps.map(
      (t, n) => `${t.toFixed(3)},${(170 * Math.sin((2 * Math.PI * 50 * n) / rateHz)).toFixed(3)}`,
    );
    const { intervalS, intervalWithin } = read(`time (s),CH1 (V)\n${rows.join('\n')}\n`);
    expect(Math.abs(intervalS * rateHz - 1)).toBeLessThan(intervalWithin!);
    expect(intervalWithin).toBeLessThan(1.2 / count);
  }
});

/** By every pair of stamps: no slope may carry one's lower end past another's upper. */
function slopesThatFit(
  stamps: readonly number[],
  half: number,
): { readonly least: number; readonly most: number } {
  let [least, most] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i < stamps.length; i++) {
    for (let j = i + 1; j < stamps.length; j++) {
      least = Math.max(least, (stamps[j]! - stamps[i]! - 2 * half) / (j - i));
      most = Math.min(most, (stamps[j]! - stamps[i]! + 2 * half) / (j - i));
    }
  }
  return { least, most };
}
