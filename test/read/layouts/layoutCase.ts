import { expect, test } from 'vitest';
import type { Quantity } from '../../../src/read/capture.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { readsBothWays } from '../chunks/bothWays.ts';

/** What a file written by the test must read as. */
export interface LayoutCase {
  /** The trap, in words. */
  readonly title: string;
  readonly file: string | Uint8Array;
  readonly sampleRateHz?: number;
  readonly startS: number;
  readonly intervalS: number;
  /** Name, unit and the numbers as printed, NaN where none is. */
  readonly channels: readonly (readonly [name: string, unit: string, samples: readonly number[]])[];
  /** Absent: as the unit says. */
  readonly quantities?: readonly Quantity[];
  /** Codes, in order. */
  readonly notices?: readonly string[];
  /** Relative to the interval: what the printed digits of the stamps leave open. */
  readonly intervalWithin?: number;
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** One test a case: everything a later room trusts. */
export function testLayouts(cases: readonly LayoutCase[]): void {
  for (const layout of cases) {
    test(layout.title, async () => {
      const bytes = typeof layout.file === 'string' ? bytesOf(layout.file) : layout.file;
      const { sampleRateHz } = layout;
      const options = sampleRateHz === undefined ? {} : { sampleRateHz };
      const capture = readCapture(bytes, options);
      for (const chunk of [7, 100, 1000]) await readsBothWays(bytes, options, { end: 150, chunk });
      expect(capture.channels.map(({ name, unit }) => [name, unit])).toEqual(
        layout.channels.map(([name, unit]) => [name, unit]),
      );
      expect(capture.channels.map(({ quantity }) => quantity)).toEqual(
        layout.quantities ?? layout.channels.map(([, unit]) => quantityOf(unit)),
      );
      expect(capture.notices.map((notice) => notice.code)).toEqual(layout.notices ?? []);
      // Fifteen digits of a double, unless the case says what its stamps leave open.
      const within = layout.intervalWithin ?? 1e-12;
      expect(Math.abs(capture.intervalS / layout.intervalS - 1)).toBeLessThanOrEqual(within);
      const spanS = layout.intervalS * capture.sampleCount;
      expect(Math.abs(capture.startS - layout.startS)).toBeLessThanOrEqual(Math.max(within, 1e-12) * spanS);
      layout.channels.forEach(([, , samples], k) => {
        const channel = capture.channels[k]!;
        expect(channel.samples.length).toBe(samples.length);
        // A prefix or scale multiplies once: one rounding, 2^-53 relative, twice for a scale with an offset.
        samples.forEach((sample, i) => {
          const read = channel.samples[i]!;
          if (Number.isNaN(sample)) expect(read).toBeNaN();
          else expect(Math.abs(read - sample)).toBeLessThanOrEqual(4e-16 * Math.max(Math.abs(sample), 1));
        });
        const missing = samples.flatMap((sample, i) => (Number.isNaN(sample) ? [i] : []));
        const inGaps = channel.gaps.flatMap(({ from, to }) =>
          Array.from({ length: to - from }, (_, i) => from + i),
        );
        expect(inGaps).toEqual(missing);
      });
    });
  }
}

function quantityOf(unit: string): Quantity {
  return unit === 'V' ? 'voltage' : unit === 'A' ? 'current' : 'other';
}
