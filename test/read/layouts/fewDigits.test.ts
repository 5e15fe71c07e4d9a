import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { someOf } from '../../samples.ts';
import { readsBothWays } from '../chunks/bothWays.ts';
import { bytesOf } from './layoutCase.ts';
import { lines, rows } from './wave.ts';

/** So many significant digits, zeros at the end dropped, as a C program's %g writes them. */
const general =
  (digits: number) =>
  (value: number): string =>
    String(Number(value.toPrecision(digits)));
const exponential =
  (digits: number) =>
  (value: number): string =>
    value.toExponential(digits - 1);
/** The same, zeros kept. */
const precise =
  (digits: number) =>
  (value: number): string =>
    value.toPrecision(digits);

const INTERVALS_S = [1e-5, 4e-5, 6e-5, 1.3e-4];
const cases = [
  ['three digits', general(3)],
  ['three digits, zeros kept', precise(3)],
  ['three digits and an exponent', exponential(3)],
  ['four digits', general(4)],
  ['five digits', general(5)],
  ['a decimal place of a tenth of a millisecond', (value: number) => value.toFixed(4)],
] as const;

describe.each(someOf(cases))('times printed with %s', (_, print) => {
  const starts = [0, -0.0333, 0.0051, 0.093];
  const records = INTERVALS_S.flatMap((intervalS) => starts.map((startS) => [intervalS, startS] as const));

  test.each(records)(
    'every %s s from %s s are even, and a clean sine stays clean',
    async (intervalS, startS) => {
      const count = Math.round(0.11 / intervalS);
      const timeOf = (i: number): number => startS + i * intervalS;
      const sine = (i: number): string => (169.7 * Math.sin(2 * Math.PI * 60 * timeOf(i))).toFixed(3);
      const bytes = bytesOf(
        lines(['Time (s),Outlet (V)', ...rows(count).map((i) => `${print(timeOf(i))},${sine(i)}`)]),
      );
      const capture = readCapture(bytes);
      await readsBothWays(bytes, {}, { end: 400, chunk: 5000 });
      expect(capture.notices.filter(({ code }) => code !== 'time.coarse')).toEqual([]);
      expect(capture.sampleCount).toBe(count);
      // Each place where the printed time goes on is known to a sample: over the record, that is one in its count.
      expect(Math.abs(capture.intervalS / intervalS - 1)).toBeLessThan(1 / count);
      const { voltage } = assayCapture(capture, { file: 'a.csv', sha256: '0'.repeat(64) })[0]!.result;
      // Millivolts in 170 V: a thousandth of a percent; harmonics of a sine on rounded times were 0.02 to 0.9 %.
      expect(voltage!.thdPercent.value).toBeLessThan(0.002);
    },
  );
});
