import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scanRegularRows } from '../../../src/read/table/scanRegularRows.ts';
import type { DecimalMark, Delimiter } from '../../../src/read/text/dialect.ts';
import { plainRow } from './plainRow.ts';

const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

/** @returns the offset of the first row not read, and the rows that were. */
function scan(
  text: string,
  delimiter: Delimiter,
  wanted: readonly number[],
  decimalMark: DecimalMark = '.',
): [number, number[][]] {
  // A line end behind the text, as a chunk has it.
  const bytes = latin1(`${text}\n`);
  const columns = wanted.map(() => new Float64Array(1000));
  const target = { columns, rowCount: 0 };
  const next = scanRegularRows(bytes, 0, text.length, { delimiter, decimalMark }, wanted, target);
  const rows = Array.from({ length: target.rowCount }, (_, row) => columns.map((column) => column[row]!));
  return [next, rows];
}

const digits = (minLength: number, maxLength: number): fc.Arbitrary<string> =>
  fc.string({ unit: fc.constantFrom(...'0123456789'), minLength, maxLength });
const sign = fc.constantFrom('', '-', '+');
/** Any finite double as its bits, so that subnormals and the largest come as often as others. */
const anyDouble = fc
  .tuple(fc.integer({ min: 0, max: 2 ** 32 - 1 }), fc.integer({ min: 0, max: 2 ** 32 - 1 }))
  .map(([high, low]) => new Float64Array(Uint32Array.of(low, high).buffer)[0]!)
  .filter(Number.isFinite);
const token = fc.oneof(
  anyDouble.map(String),
  // More digits than tell a double apart, and halfway between two of them.
  anyDouble.map((value) => value.toExponential(25)),
  fc.tuple(fc.integer({ min: 1, max: 2 ** 30 }), fc.integer({ min: 1, max: 2 ** 22 })).map(
    // 2^53 + odd numbers below 2^54 lie halfway between neighbours.
    ([a, b]) => String(2n ** 53n + 2n * BigInt(a) * BigInt(b) + 1n),
  ),
  fc.tuple(sign, digits(1, 25), digits(0, 25)).map(([s, whole, part]) => `${s}${whole}.${part}`),
  fc.tuple(sign, digits(1, 20)).map(([s, part]) => `${s}.${part}`),
  fc
    .tuple(sign, digits(1, 17), digits(0, 6), fc.constantFrom('e', 'E', 'e-', 'E+'), digits(1, 3))
    .map(([s, whole, part, e, power]) => `${s}${whole}.${part}${e}${power}`),
  fc.constantFrom('0', '-0', '+0', '-0.0', '0e999', '-.0', '5.', '4.9e-324', '2.5e-324', '2.4e-324'),
  fc.constantFrom('1e22', '1e23', '9007199254740991', '9007199254740993', '9007199254740992.5'),
  fc.constantFrom('1e-22', '1e-23', '179769313486231580000e9', '123456789012345678e-20'),
);
// From 1e30 on a number stands for none.
const finiteToken = token.filter((text) => Math.abs(Number(text)) < 1e30);

describe('scanRegularRows(bytes, …)', () => {
  test('reads what Number reads, bit for bit', () => {
    fc.assert(
      fc.property(
        fc.array(finiteToken, { minLength: 1, maxLength: 6 }),
        fc.constantFrom<Delimiter>(',', ';', '\t', '|', 'blanks'),
        fc.constantFrom('\n', '\r', '\r\n'),
        (tokens, delimiter, end) => {
          const row = tokens.join(delimiter === 'blanks' ? '  ' : delimiter) + end;
          const [next, rows] = scan(row + row, delimiter, [...tokens.keys()]);
          // A carriage return and the line end behind the text are one.
          expect(next).toBe(2 * row.length + (end === '\r' ? 1 : 0));
          expect(rows.length).toBe(2);
          for (const values of rows) {
            expect(tokens.filter((text, k) => !Object.is(values[k], Number(text)))).toEqual([]);
          }
        },
      ),
      { numRuns: 5000 },
    );
  });

  test('reads decimal commas, bit for bit', () => {
    fc.assert(
      fc.property(finiteToken, (text) => {
        const [, rows] = scan(`${text.replace('.', ',')};1\n`, ';', [0, 1], ',');
        expect(Object.is(rows[0]?.[0], Number(text))).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  test('takes for a row what its plain twin takes for one', () => {
    const piece = fc.oneof(
      token,
      fc.constantFrom(',', ';', '\t', ' ', '"', 'nan', 'x', '--', 'e5', '.', '1e', '\r', 'µ', '0x1', ', '),
    );
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 9 }).map((pieces) => pieces.join('')),
        fc.constantFrom<Delimiter>(',', ';', '\t', 'blanks'),
        fc.constantFrom([0], [0, 1], [1], [0, 2]),
        fc.constantFrom<DecimalMark>('.', ','),
        (text, delimiter, wanted, decimalMark) => {
          const expected = plainRow(text.split('\r')[0]!, { delimiter, decimalMark }, wanted);
          const [next, rows] = scan(`${text}\n`, delimiter, wanted, decimalMark);
          if (expected === null) expect([next, rows]).toEqual([0, []]);
          else expect(rows[0]).toEqual(expected);
        },
      ),
      { numRuns: 5000 },
    );
  });

  test.each([
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
  ])('leaves “%s” alone', (text) => {
    expect(scan(`${text}\n`, ',', [0, 1])).toEqual([0, []]);
  });

  test.each([
    ['\n', 4],
    ['\r', 4],
    ['\r\n', 5],
  ])('ends a row at %j', (end, next) => {
    expect(scan(`1,2${end}x`, ',', [0, 1])).toEqual([next, [[1, 2]]]);
  });

  test('passes over columns that nobody asked for, words among them', () => {
    expect(scan('a,1.5,b c,2.5,rest, of it\n3', ',', [1, 3])).toEqual([26, [[1.5, 2.5]]]);
    expect(scan('a\t1.5  b 2.5 rest\n', 'blanks', [1, 3])[1]).toEqual([[1.5, 2.5]]);
  });

  test('stops at the start of the first row that is not regular, and keeps those before it', () => {
    expect(scan('1,2\n3,nan\n5,6\n', ',', [0, 1])).toEqual([4, [[1, 2]]]);
    expect(scan('1,2\n\n5,6\n', ',', [0, 1])).toEqual([4, [[1, 2]]]);
    expect(scan('1,2\n3,1e999\n', ',', [0, 1])).toEqual([4, [[1, 2]]]);
    // SCPI-1999 (from memory): a number that says that there is none.
    for (const none of ['9.91E+37', '-9.9E37', '9900000000000000000000e16']) {
      expect(scan(`1,2\n3,${none}\n`, ',', [0, 1])).toEqual([4, [[1, 2]]]);
    }
  });

  test('reads no row that starts at or behind the end, and the last one whole', () => {
    const bytes = latin1('1,2\n3,4\n5,6\n');
    const columns = [new Float64Array(9), new Float64Array(9)];
    const target = { columns, rowCount: 0 };
    const dialect = { delimiter: ',', decimalMark: '.' } as const;
    expect(scanRegularRows(bytes, 0, 5, dialect, [0, 1], target)).toBe(8);
    expect(target.rowCount).toBe(2);
    expect(scanRegularRows(bytes, 8, 9, dialect, [0, 1], target)).toBe(12);
    expect([...columns[1]!.subarray(0, 3)]).toEqual([2, 4, 6]);
  });
});
