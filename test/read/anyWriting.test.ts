import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MeasureError } from '../../src/base/measureError.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { draws } from '../samples.ts';
import { readsBothWays } from './chunks/bothWays.ts';

/** One way to write a capture down. */
const writing = fc.record({
  encoding: fc.constantFrom(
    'utf-8',
    'utf-8 with mark',
    'utf-16le',
    'utf-16be',
    'utf-16le without mark',
    'latin-1',
  ),
  table: fc.constantFrom(
    { delimiter: ',', mark: '.' },
    { delimiter: ', ', mark: '.' },
    { delimiter: ';', mark: '.' },
    { delimiter: ';', mark: ',' },
    { delimiter: '\t', mark: '.' },
    { delimiter: '\t', mark: ',' },
    { delimiter: '   ', mark: '.' },
    { delimiter: '  ', mark: ',' },
  ),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  timeUnit: fc.constantFrom(['s', 1], ['ms', 1e-3], ['µs', 1e-6], ['ns', 1e-9]) as fc.Arbitrary<
    [string, number]
  >,
  voltUnit: fc.constantFrom(['V', 1], ['mV', 1e-3], ['kV', 1e3]) as fc.Arbitrary<[string, number]>,
  unitsIn: fc.constantFrom('brackets', 'row', 'slash'),
  settings: fc.constantFrom([], ['Model', 'Shelf 4'], ['Coupling', 'DC']),
  isEnded: fc.boolean(),
  rowCount: fc.integer({ min: 40, max: 300 }),
  intervalS: fc.constantFrom(1e-6, 4e-5, 1.6e-4, 1 / 12000),
  startS: fc.constantFrom(0, -0.0125, 0.5),
  amplitudeV: fc.double({ min: 1, max: 400, noNaN: true }),
});
type Writing = typeof writing extends fc.Arbitrary<infer T> ? T : never;

const wave = (w: Writing, i: number): number => w.amplitudeV * Math.sin(0.13 * i + 0.4) + 0.02 * w.amplitudeV;

function written(w: Writing): Uint8Array {
  const { delimiter, mark } = w.table;
  // Sixteen digits: what is printed is the number, but for its last bits.
  const number = (value: number): string => value.toExponential(15).replace('.', mark);
  const [timeUnit, secondsPerUnit] = w.timeUnit;
  const [voltUnit, voltsPerUnit] = w.voltUnit;
  const headers = {
    brackets: [`Time (${timeUnit})${delimiter}Outlet [${voltUnit}]`],
    slash: [`Time/${timeUnit}${delimiter}Outlet/${voltUnit}`],
    row: [`Time${delimiter}Outlet`, `${timeUnit}${delimiter}${voltUnit}`],
  }[w.unitsIn];
  const body = Array.from(
    { length: w.rowCount },
    (_, i) =>
      number((w.startS + i * w.intervalS) / secondsPerUnit) + delimiter + number(wave(w, i) / voltsPerUnit),
  );
  const settings = w.settings.length === 0 ? [] : [w.settings.join(delimiter)];
  const text = [...settings, ...headers, ...body].join(w.lineEnd) + (w.isEnded ? w.lineEnd : '');
  return encoded(text, w.encoding);
}

function encoded(text: string, encoding: string): Uint8Array {
  if (encoding.startsWith('utf-8'))
    return new TextEncoder().encode(encoding === 'utf-8' ? text : `\ufeff${text}`);
  if (encoding === 'latin-1') return Uint8Array.from(text, (character) => character.charCodeAt(0));
  const marked = encoding.endsWith('without mark') ? text : `\ufeff${text}`;
  const bytes = new Uint8Array(2 * marked.length);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < marked.length; i++)
    view.setUint16(2 * i, marked.charCodeAt(i), encoding !== 'utf-16be');
  return bytes;
}

test('readCapture(bytes) reads one wave alike however it is written', () => {
  fc.assert(
    fc.property(writing, (w) => {
      const capture = readCapture(written(w));
      expect(capture.notices).toEqual([]);
      expect(capture.channels.map(({ name, unit }) => [name, unit])).toEqual([['Outlet', 'V']]);
      expect(capture.sampleCount).toBe(w.rowCount);
      // Printing, reading and two changes of unit round four times, of at most half an ulp of the largest
      // stamp each; the interval divides that by the number of steps, the start by nothing.
      const stampError = 4 * 2 ** -53 * (Math.abs(w.startS) + w.rowCount * w.intervalS);
      expect(Math.abs(capture.startS - w.startS)).toBeLessThanOrEqual(2 * stampError);
      expect(Math.abs(capture.intervalS - w.intervalS)).toBeLessThanOrEqual(
        (2 * stampError) / (w.rowCount - 1) + 2 ** -52 * w.intervalS,
      );
      capture.channels[0].samples.forEach((sample, i) => {
        // Sixteen printed digits and three roundings.
        expect(Math.abs(sample - wave(w, i))).toBeLessThanOrEqual(1e-15 * 1.1 * w.amplitudeV);
      });
    }),
    { numRuns: draws(200, 30) },
  );
});

test('readInChunks(source, …) reads the same, however it is written and wherever it is cut', async () => {
  await fc.assert(
    fc.asyncProperty(writing, fc.integer({ min: 0, max: 60 }), async (w, cut) => {
      const whole = written(w);
      await readsBothWays(whole.slice(0, whole.length - cut), {}, { end: 256, chunk: 700 });
    }),
    { numRuns: draws(200, 30) },
  );
});

test('readCapture(bytes) of a file cut at any byte reads it or throws a MeasureError', () => {
  fc.assert(
    fc.property(writing, fc.double({ min: 0, max: 1, noNaN: true }), (w, share) => {
      const whole = written({ ...w, rowCount: 40 });
      const cut = whole.slice(0, Math.round(share * whole.length));
      try {
        const capture = readCapture(cut);
        // What is left agrees with the whole, sample for sample.
        expect(capture.sampleCount).toBeLessThanOrEqual(40);
        capture.channels[0].samples.forEach((sample, i) => {
          expect(Math.abs(sample - wave(w, i))).toBeLessThanOrEqual(1e-15 * 1.1 * w.amplitudeV);
        });
      } catch (error) {
        expect(error).toBeInstanceOf(MeasureError);
      }
    }),
    { numRuns: draws(300, 40) },
  );
});

test('readCapture(bytes) of any bytes reads them or throws a MeasureError', () => {
  const pieces = fc.constantFrom(
    ',',
    ';',
    '\t',
    '\n',
    '\r',
    '"',
    '1',
    '-2.5',
    'e',
    'nan',
    'Time',
    'V',
    '(s)',
    '=',
    ':',
    ' ',
    '0.1,2\n',
    '\0',
    'µ',
  );
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 120 }), (parts) => {
      try {
        readCapture(new TextEncoder().encode(parts.join('')), { sampleRateHz: 1000 });
      } catch (error) {
        expect(error).toBeInstanceOf(MeasureError);
      }
    }),
    { numRuns: draws(500, 60) },
  );
});
