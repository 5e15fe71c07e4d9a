import { expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { bytesOf } from './layoutCase.ts';
import { lines, rows, volts } from './wave.ts';

const values = rows(400).map((i) => String(volts(i * 1e-4)));

test.each([
  ['Sample rate,10 kS/s', 1e-4],
  ['Sample rate: 0.01MSa/s', 1e-4],
  ['Sample rate,100 MS/s', 1e-8],
  ['Sample rate,1.05 MHz', 1 / 1.05e6],
  ['Sampling frequency = 5 kHz', 2e-4],
  ['Sample interval,20 µs', 2e-5],
  ['Sample interval in µs,20', 2e-5],
  ['Sample interval in ms: 0.02', 2e-5],
])('a head that says "%s" is read as people mean it', (setting, intervalS) => {
  const { intervalS: read } = readCapture(bytesOf(lines([setting, 'Outlet (V)', ...values])));
  expect(Math.abs(read / intervalS - 1)).toBeLessThan(1e-12);
});

test('a row of units that says "in s" names units', () => {
  const body = values.map((v, i) => `${(i * 0.1).toFixed(1)},${v}`);
  const capture = readCapture(bytesOf(lines(['Time,Outlet', 'in ms,in V', ...body])));
  expect(capture.layout).toContain('time in ms');
  expect(capture.notices).toEqual([]);
  expect(capture.channels[0]).toMatchObject({ name: 'Outlet', unit: 'V' });
});

test('advice on the time base fits a record of microseconds', () => {
  // 1.2 cycles of 120 kHz in 10 µs.
  const sine = rows(1000).map(
    (i) => `${(i * 1e-8).toExponential(4)},${Math.sin((2 * Math.PI * 1.2 * i) / 1000).toFixed(4)}`,
  );
  const capture = readCapture(bytesOf(lines(['Time (s),Outlet (V)', ...sine])));
  const measured = (): unknown => assayCapture(capture, { file: 'a.csv', sha256: '0'.repeat(64) });
  expect(measured).toThrow(
    expect.objectContaining({
      code: 'wave.tooShort',
      facts: expect.objectContaining({ isBetweenGaps: false }),
    }),
  );
});

test('blank lines among values that have no times are said', () => {
  const file = lines(['Rate,10000', 'Outlet (V)', ...values.with(100, '')]);
  expect(readCapture(bytesOf(file)).notices.map(({ code }) => code)).toEqual(['rows.blank']);
});
