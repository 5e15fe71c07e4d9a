import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { MeasureError } from '../../../src/base/measureError.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { rescaleCapture } from '../../../src/read/rescaleCapture.ts';
import { draws } from '../../samples.ts';
import { readsBothWays } from '../chunks/bothWays.ts';
import { bytesOf } from './layoutCase.ts';
import { amperes, lines, rows, timeOf, volts } from './wave.ts';

const header = 'Time (s),Outlet (V)';
const every = rows(400);
const V = every.map((i) => volts(timeOf(i)));
const body = every.map((i) => `${timeOf(i).toFixed(4)},${V[i]}`);
/** Long enough that a pattern which runs back and forth would not end within this test. */
const LONG = draws(2_000_000, 200_000);

/** Reads it in every way. */
async function outcome(text: string): Promise<MeasureError | ReturnType<typeof readCapture>> {
  const bytes = bytesOf(text);
  await readsBothWays(bytes, {}, { end: 4000, chunk: 5000 });
  try {
    return readCapture(bytes);
  } catch (error) {
    if (error instanceof MeasureError) return error;
    throw error;
  }
}

describe('a file that is large in one place is read or refused as fast as any of its size', () => {
  test.each([
    ['a cell of digits', lines([header, ...body.with(100, `0.0128,${'1'.repeat(LONG)}`)])],
    ['a cell of digits and a letter', lines([header, ...body.with(100, `0.0128,${'1'.repeat(LONG)}x`)])],
    ['a cell of digits and a star', lines([header, ...body.with(100, `0.0128,${'1.'.repeat(LONG / 2)}*x`)])],
    ['a line of blanks', lines([`a${' '.repeat(LONG)}b`, header, ...body])],
    ['names among blanks', lines([header.replaceAll(' ', ' '.repeat(LONG / 2)), ...body])],
    ['a probe of digits', lines([`Probe,${'1'.repeat(LONG)}x`, header, ...body])],
    ['brackets', lines([`Key${' ('.repeat(LONG / 2)},1`, header, ...body])],
    ['colons', lines(['a:'.repeat(LONG / 2), header, ...body])],
  ])('%s', async (_, text) => {
    const read = await outcome(text);
    if (read instanceof MeasureError) throw read;
    expect(read.sampleCount).toBe(400);
    expect(read.channels[0].samples[99]).toBe(V[99]);
  });

  test.each([
    ['one row of numbers', '1,'.repeat(150_000)],
    [
      'rows and columns exchanged',
      lines(
        rows(20).map((r) =>
          rows(20_000)
            .map((i) => `${r * i}`)
            .join(','),
        ),
      ),
    ],
  ])('%s: refused, the columns counted', async (_, text) => {
    const read = await outcome(text);
    expect(read).toBeInstanceOf(MeasureError);
    expect((read as MeasureError).code).toBe('columns.many');
  });

  test('rows of 150,000 columns are refused by the beginning of each', () => {
    const bytes = bytesOf(lines(rows(12).map(() => '1.5,'.repeat(150_000))));
    const began = performance.now();
    expect(() => readCapture(bytes)).toThrow(/150001/);
    // A tenth of it on an idle machine; to look at every cell under every dialect took four seconds.
    expect(performance.now() - began).toBeLessThan(2000);
  });
});

describe('numbers that no bench has to do with', () => {
  const values = V.map(String);
  test.each([
    ['an interval', ['Interval,1e-308', 'Outlet (V)', ...values]],
    ['a sample rate', ['Sample rate,1e25', 'Outlet (V)', ...values]],
    ['times', [header, ...every.map((i) => `${timeOf(i).toFixed(4)}e-290,${V[i]}`)]],
    ['a start', ['Start,1e25', 'Interval,1e-4', 'Outlet (V)', ...values]],
  ])('%s: refused in one line', async (_, content) => {
    const read = await outcome(lines(content));
    expect(read).toBeInstanceOf(MeasureError);
    expect((read as MeasureError).code).toBe('time.absurd');
    expect((read as MeasureError).message).not.toContain('\n');
  });

  test.each([1e308, -1e-308, 1e13])('a scale of %s: refused', (factor) => {
    const capture = readCapture(bytesOf(lines([header, ...body])));
    expect(() =>
      rescaleCapture(capture, { scales: [{ channel: null, factor }], inverted: [], measured: undefined }),
    ).toThrow(MeasureError);
  });
});

test('the voltage itself is refused as the current, and the others are named', () => {
  const three = every.map((i) => `${timeOf(i).toFixed(4)},${V[i]},${amperes(timeOf(i))}`);
  const capture = readCapture(bytesOf(lines(['Time (s),Outlet (V),Clamp (V)', ...three])));
  const source = { file: 'a.csv', sha256: '0'.repeat(64) };
  expect(() => assayCapture(capture, source, { current: 'outlet' })).toThrow(
    expect.objectContaining({ code: 'channel.same', facts: { channel: 'Outlet', others: ['Clamp'] } }),
  );
  expect(assayCapture(capture, source, { current: 'Clamp' })[0]!.result.current?.channel).toBe('Clamp');
});
