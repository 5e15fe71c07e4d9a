import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { draws, someOf } from '../../samples.ts';
import { readsBothWays } from './bothWays.ts';

const demonstrations = readdirSync('captures').filter((name) => name.endsWith('.csv'));

describe('readInChunks(source, …) reads what readCapture reads', () => {
  test.each(someOf(demonstrations))('of %s', async (name) => {
    const bytes = readFileSync(`captures/${name}`);
    const isUtf16 = name === 'b-blue-600w.csv';
    for (const lengths of [
      { end: 4096, chunk: 5000 },
      { end: 1000, chunk: 65_536 },
    ]) {
      expect(await readsBothWays(bytes, {}, lengths)).toBe(!isUtf16);
    }
  });
});

const rowsOf = (count: number, row: (i: number) => string): string[] =>
  Array.from({ length: count }, (_, i) => row(i));
const row = (i: number): string =>
  `${(i * 1e-4 - 0.02).toFixed(6)},${(325 * Math.sin(0.0314 * i)).toFixed(3)}`;
const text = (lines: readonly string[], end = '\n'): Uint8Array =>
  new TextEncoder().encode(['Time (s),Outlet (V)', ...lines].map((line) => line + end).join(''));
const latin1 = (content: string): Uint8Array => Uint8Array.from(content, (c) => c.charCodeAt(0));

describe('readInChunks(source, …) reads as readCapture does', () => {
  const lengths = { end: 600, chunk: 512 };
  const inPlaceOf = (at: number, line: string): string[] => rowsOf(1000, (i) => (i === at ? line : row(i)));
  const cases: Record<string, Uint8Array> = {
    'a row that is none': text(inPlaceOf(500, '0.03,x#')),
    'a row with a missing value': text(inPlaceOf(500, '0.030000,nan')),
    'a row of one cell': text(inPlaceOf(500, '7')),
    'more rows that are none than one in a hundred': text(
      rowsOf(1000, (i) => (i % 90 === 7 ? '?!' : row(i))),
    ),
    'empty lines, and a row that is none behind them': text(
      rowsOf(1000, (i) => (i === 700 ? '--' : i % 50 === 0 ? `${row(i)}\n` : row(i))),
    ),
    'pairs of line ends': text(inPlaceOf(500, 'x'), '\r\n'),
    'carriage returns': text(inPlaceOf(500, 'x'), '\r'),
    'line ends written twice': text(rowsOf(1000, row), '\r\r\n'),
    'a line longer than a chunk': text(inPlaceOf(500, 'x'.repeat(3000))),
    'a remark between two rows': text(rowsOf(1000, (i) => (i === 500 ? `kettle on\n${row(i)}` : row(i)))),
    'characters beyond ASCII in a row': text(inPlaceOf(500, '0.03 µs,2')),
    'Latin-1 in one row far behind the head': latin1(
      new TextDecoder().decode(text(inPlaceOf(500, '0.030000,1,\xb5'))),
    ),
    'no UTF-8 in its last row': latin1(new TextDecoder().decode(text(inPlaceOf(998, '0.0798,1,\xb5')))),
    'a byte order mark': new Uint8Array([0xef, 0xbb, 0xbf, ...text(rowsOf(1000, row))]),
    'rows that are lost': text(rowsOf(1000, row).filter((_, i) => i < 400 || i > 409)),
    'a coarse clock': text(rowsOf(1000, (i) => `${(i * 1e-4).toFixed(3)},${(i * 37) % 100}`)),
    'two records': text([...rowsOf(1000, row), ...rowsOf(1000, row)]),
    'two records with a head each, on one clock': text(
      rowsOf(1000, (i) => (i === 500 ? `Time (s),Outlet (V)\n${row(i)}` : row(i))),
    ),
    'a time that runs back': text(inPlaceOf(500, row(480))),
    'a time that stands still': text(rowsOf(1000, (i) => `0.5,${i}`)),
    'a last row cut': text([...rowsOf(1000, row), '0.08,1']).slice(0, -1),
    'rows behind the last that has values': text([...rowsOf(1000, row), ...rowsOf(400, () => ',')]),
    'text below the rows': text([...rowsOf(1000, row), 'end of record']),
    'rows shorter than those sampled': text(
      rowsOf(3000, (i) => (i % 64 < 8 ? row(i) : `${i / 1e4},${i % 7}`)),
    ),
    'sample numbers without a header': latin1(rowsOf(1000, (i) => `${i},${i % 13}.5\n`).join('')),
    'values alone': latin1(rowsOf(1000, (i) => `${i % 13}.5\n`).join('')),
    'a column of numbers beside the time': latin1(
      ['No,Time (s),Outlet (V)\n', ...rowsOf(1000, (i) => `${i},${row(i)}\n`)].join(''),
    ),
    'a time without a unit that counts': latin1(
      ['Rate,1000\nTime,Outlet (V)\n', ...rowsOf(1000, (i) => `${i},${i % 13}.5\n`)].join(''),
    ),
    'a time without a unit that ceases to count': latin1(
      [
        'Rate,1000\nTime,Outlet (V)\n',
        ...rowsOf(1000, (i) => `${i < 900 ? i : i + 0.25},${i % 13}.5\n`),
      ].join(''),
    ),
  };
  test.each(Object.entries(cases))('%s', async (_, bytes) => {
    for (const sampleRateHz of [undefined, 5000]) {
      const options = sampleRateHz === undefined ? {} : { sampleRateHz };
      expect(await readsBothWays(bytes, options, lengths)).toBe(true);
    }
  });

  test('any damage', async () => {
    const whole = text(rowsOf(600, row));
    const damage = fc.record({
      at: fc.integer({ min: 0, max: whole.length - 1 }),
      byte: fc.constantFrom(...'0123456789.,-+eE;\t \n\r"x#', '\0', '\xff', '\xc2'),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.array(damage, { maxLength: 4 }),
        fc.integer({ min: 0, max: 200 }),
        fc.integer({ min: 20, max: 3000 }),
        async (damages, cut, chunk) => {
          const bytes = whole.slice(0, whole.length - cut);
          for (const { at, byte } of damages) bytes[at] = byte.charCodeAt(0);
          await readsBothWays(bytes, {}, { end: 300, chunk });
        },
      ),
      { numRuns: draws(300, 30) },
    );
  });
});
