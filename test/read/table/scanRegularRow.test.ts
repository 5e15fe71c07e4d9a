import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scanRegularRow } from '../../../src/read/table/scanRows.ts';
import type { DecimalMark, Delimiter } from '../../../src/read/text/dialect.ts';

const scan = (
  text: string,
  delimiter: Delimiter,
  wanted: number[],
  decimalMark: DecimalMark = '.',
): [number, number[]] => {
  const values = new Float64Array(wanted.length);
  const next = scanRegularRow(text, 0, { delimiter, decimalMark }, wanted, values);
  return [next, Array.from(values)];
};

const token = fc.oneof(
  // From 1e30 on a number stands for none.
  fc.double({ noNaN: true, min: -9e29, max: 9e29 }).map(String),
  fc
    .double({ noNaN: true, noDefaultInfinity: true, min: -1e3, max: 1e3 })
    .map((value) => value.toExponential(8).replace('e', 'E')),
  fc.integer({ min: -99999, max: 99999 }).map((value) => (value < 0 ? `-000${-value}.50` : `+${value}.`)),
);

test('scanRegularRow(text, …) reads what Number reads, bit for bit', () => {
  fc.assert(
    fc.property(
      fc.array(token, { minLength: 1, maxLength: 6 }),
      fc.constantFrom<Delimiter>(',', ';', '\t', 'blanks'),
      (tokens, delimiter) => {
        const text = `${tokens.join(delimiter === 'blanks' ? '  ' : delimiter)}\n`;
        const [next, values] = scan(text, delimiter, [...tokens.keys()]);
        expect(next).toBe(text.length);
        expect(values.every((value, i) => Object.is(value, Number(tokens[i])))).toBe(true);
      },
    ),
  );
});

test('scanRegularRow(text, …) reads decimal commas', () => {
  expect(scan('-0,25;1,5E-03\r\n', ';', [0, 1], ',')).toEqual([15, [-0.25, 0.0015]]);
});

test('scanRegularRow(text, …) passes over columns that nobody asked for, words among them', () => {
  expect(scan('a,1.5,b c,2.5,rest, of it\n3', ',', [1, 3])).toEqual([26, [1.5, 2.5]]);
  expect(scan('a\t1.5  b 2.5 rest\n', 'blanks', [1, 3])[1]).toEqual([1.5, 2.5]);
});

test('scanRegularRow(text, …) ends at a line feed, a carriage return, both, or the end of the text', () => {
  for (const [end, next] of [
    ['\n', 4],
    ['\r', 4],
    ['\r\n', 5],
    ['', 3],
  ] as const) {
    expect(scan(`1,2${end}`, ',', [0, 1])[0]).toBe(next);
  }
});

test('scanRegularRow(text, …) leaves anything irregular alone', () => {
  for (const text of [
    '1,',
    '1',
    ',1',
    '1,x',
    '1,2x',
    '1,nan',
    '1,"2"',
    '1,0x10',
    '1,1e',
    '1,1e999',
    '1,1 2',
    '1,--2',
    '"a,1",2',
    '',
  ]) {
    expect(scan(`${text}\n`, ',', [0, 1])[0], text).toBe(0);
  }
});
