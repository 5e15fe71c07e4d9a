import { describe, expect, test } from 'vitest';
import { readCapture } from '../../../src/read/readCapture.ts';
import { captureLayouts, type LayoutName, writeCapture } from '../../../src/synth/writeCapture.ts';

const rateHz = 96_000;
const count = 6000;
const sine = (rms: number, bits: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => {
    const value = rms * Math.SQRT2 * Math.sin((2 * Math.PI * 60 * i) / rateHz + 0.3);
    const step = (rms * 4) / 2 ** bits;
    return step * Math.round(value / step);
  });

const written = {
  channels: [
    { name: 'Output', unit: 'V', samples: sine(120, 8) },
    { name: 'Clamp', unit: 'A', samples: sine(2.5, 8) },
  ],
  startS: -0.02,
  intervalS: 1 / rateHz,
  comment: 'Invented, with a comma; a semicolon: 12.5 V',
} as const;

describe('a capture written is read back', () => {
  test.each(Object.keys(captureLayouts) as LayoutName[])('layout %s', (layout) => {
    const bytes = writeCapture(layout, written);
    const capture = readCapture(bytes, layout === 'values' ? { sampleRateHz: rateHz } : {});
    expect(capture.sampleCount).toBe(count);
    // Times are written to a thousandth of the interval; over the record that is 2e-7 of it.
    expect(Math.abs(capture.intervalS * rateHz - 1)).toBeLessThan(1e-6);
    if (layout !== 'values' && layout !== 'index') {
      expect(Math.abs(capture.startS - written.startS)).toBeLessThan(1e-3 * written.intervalS);
    }
    expect(capture.channels.length).toBe(2);
    capture.channels.forEach(({ samples }, channel) => {
      const original = written.channels[channel]!.samples;
      const largest = Math.max(...original);
      // Seven significant digits of the largest.
      const worst = samples.reduce((most, value, i) => Math.max(most, Math.abs(value - original[i]!)), 0);
      expect(worst).toBeLessThan(1e-6 * largest);
    });
    if (layout !== 'values' && layout !== 'blanks') {
      expect(capture.channels.map(({ name }) => name)).toEqual(['Output', 'Clamp']);
      expect(capture.channels.map(({ quantity }) => quantity)).toEqual(['voltage', 'current']);
    }
  });
});
