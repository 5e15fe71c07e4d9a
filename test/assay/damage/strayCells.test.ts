import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { readCapture } from '../../../src/read/readCapture.ts';

/** Five cycles of 230 V at 50 Hz, printed to 10 mV, with some cells replaced. */
function measured(cells: Readonly<Record<number, string>>) {
  const rows = Array.from({ length: 5000 }, (_, n) => {
    const volts = 230 * Math.SQRT2 * Math.sin((2 * Math.PI * n) / 1000) + ((n * 7919) % 13) / 20;
    return `${(n * 2e-5).toFixed(6)},${cells[n] ?? volts.toFixed(2)}`;
  });
  const bytes = new TextEncoder().encode(`Time (s),CH1 (V)\n${rows.join('\n')}\n`);
  const capture = readCapture(bytes);
  const [assay] = assayCapture(capture, { file: 'outlet.csv', sha256: '' });
  return { capture, result: assay!.result };
}

const sound = measured({}).result;

describe('cells that hold what no scope saw', () => {
  test.each([
    ['a decimal point lost', { 2345: '32512' }],
    ['an exponent grown', { 2345: '1.25E+20' }],
    ['three of them', { 100: '-99999', 2345: '4000', 4321: '1e9' }],
    [
      'decimal points lost at ten places',
      // Where the wave is far from zero: elsewhere a hundred times the value is one that it might have.
      Object.fromEntries([250, 740, 1300, 1720, 2210, 2800, 3190, 3790, 4260, 4700].map((n) => [n, '20315'])),
    ],
  ] as const)('%s: said, left out, and the figures stand', (_, cells) => {
    const { capture, result } = measured(cells);
    const [first] = Object.keys(cells).map(Number);
    expect(result.waveform.kind).toBe(sound.waveform.kind);
    const [rms, soundRms] = [result.voltage!.rmsV.value!, sound.voltage!.rmsV.value!];
    // Ten samples of five thousand, at most.
    expect(Math.abs(rms / soundRms - 1)).toBeLessThan(1e-3);
    expect(result.excursions).toEqual(sound.excursions);
    const notice = result.notices.find(({ code }) => code === 'value.outlier');
    expect(notice).toMatchObject({ leftOutOf: { name: capture.channels[0].name }, more: expect.any(Number) });
    // The time of that sample, but for what products round.
    expect(Math.abs((notice as { readonly atS: number }).atS / 2e-5 - first!)).toBeLessThan(1e-6);
    // The capture is another's to read.
    expect(capture.channels[0].samples[first!]).toBe(Number(cells[first as keyof typeof cells]));
  });

  test('the numbers that stand for no value are gaps', () => {
    const { capture, result } = measured({ 100: '9.91E+37', 2345: '-9.9E+37' });
    expect(capture.channels[0].gaps).toEqual([
      { from: 100, to: 101 },
      { from: 2345, to: 2346 },
    ]);
    expect(result.waveform.kind).toBe(sound.waveform.kind);
    expect(result.notices.map(({ code }) => code)).not.toContain('value.outlier');
  });
});
