import { describe, expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { readsBothWays } from '../chunks/bothWays.ts';
import { bytesOf } from './layoutCase.ts';
import { lines, rows, sampled, timeOf, volts } from './wave.ts';

const V = sampled(volts);
const header = 'Time (s),Outlet (V)';
const row = (i: number): string => `${timeOf(i).toFixed(4)},${V[i]}`;
const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));
/** Bytes without order, the same in each run: a linear congruence. */
const noise = (count: number): Uint8Array => {
  let state = 12345;
  return Uint8Array.from({ length: count }, () => {
    state = (1103515245 * state + 12345) % 2 ** 31;
    return (state >> 16) & 255;
  });
};

interface Refusal {
  readonly title: string;
  readonly file: string | Uint8Array;
  readonly code: string;
  /** A word behind the code, where one code has several sentences. */
  readonly more?: string;
  /** Of what is known of it. */
  readonly facts?: object;
  readonly line?: number;
}

const refusals: Refusal[] = [
  {
    title: 'a slow log',
    file: lines(['Time (s),Battery (V)', ...rows(40).map((i) => `${i * 10},${(13 - i / 50).toFixed(2)}`)]),
    code: 'time.slow',
    facts: { intervalS: 10 },
  },
  { title: 'an empty file', file: '', code: 'file.empty', facts: {} },
  {
    title: 'nothing but line ends',
    file: '\n\n \r\n',
    code: 'file.empty',
    more: 'blank',
    facts: { bytes: 5 },
  },
  {
    title: 'a PNG picture',
    file: latin1('\x89PNG\r\n\x1a\n____'),
    code: 'file.foreign',
    facts: { kind: 'png' },
  },
  {
    title: 'a JPEG picture',
    file: latin1('\xff\xd8\xff\xe0__'),
    code: 'file.foreign',
    facts: { kind: 'jpeg' },
  },
  { title: 'a GIF picture', file: 'GIF89a__', code: 'file.foreign', facts: { kind: 'gif' } },
  {
    title: 'a BMP picture',
    file: latin1('BM\x01\x02\x03\x04\0\0\0\0\x36\0'),
    code: 'file.foreign',
    facts: { kind: 'bmp' },
  },
  { title: 'a PDF document', file: '%PDF-1.7\n', code: 'file.foreign', facts: { kind: 'pdf' } },
  { title: 'a ZIP archive', file: latin1('PK\x03\x04__'), code: 'file.foreign', facts: { kind: 'zip' } },
  {
    title: 'a page of HTML',
    file: '\n<!DOCTYPE html>\n<html><body>Not found</body></html>',
    code: 'file.foreign',
    facts: { kind: 'web page' },
  },
  { title: 'XML', file: '\ufeff<?xml version="1.0"?><a/>', code: 'file.foreign', facts: { kind: 'xml' } },
  { title: 'binary', file: noise(5000), code: 'file.binary' },
  {
    title: 'a text head before a binary body',
    file: new Uint8Array([...bytesOf(lines(['Model,one', header])), ...noise(5000)]),
    code: 'file.binary',
  },
  {
    title: 'a text without numbers',
    file: 'Dear reader,\nthis is a letter.\n',
    code: 'rows.none',
    facts: { last: 'this is a letter.' },
  },
  { title: 'a header without rows', file: lines([header]), code: 'rows.none', facts: { last: header } },
  {
    title: 'three rows',
    file: lines([header, ...rows(3).map(row)]),
    code: 'rows.few',
    facts: { rows: 3, least: 16 },
    line: 2,
  },
  {
    title: 'a time that stands still',
    file: lines([header, ...V.map((v) => `0.0010,${v}`)]),
    code: 'time.still',
    facts: { stamp: 0.001 },
    line: 2,
  },
  {
    title: 'a time that moves twice in all',
    file: lines([header, ...V.map((v, i) => `${(Math.floor(i / 70) / 100).toFixed(2)},${v}`)]),
    code: 'time.still',
    more: 'coarse',
    facts: { stamps: 3, rows: 200 },
    line: 2,
  },
  {
    title: 'a time that runs back all along',
    file: lines([header, ...rows().map((i) => row(199 - i))]),
    code: 'time.backwards',
    line: 3,
  },
  {
    title: 'a time that runs back once',
    file: lines([header, ...rows().map((i) => row(i === 100 ? 98 : i))]),
    code: 'time.backwards',
    line: 102,
  },
  {
    title: 'values and no rate',
    file: lines(['Outlet (V)', ...V.map(String)]),
    code: 'time.none',
    facts: { isNumbered: false, textColumn: null },
  },
  {
    title: 'numbered rows and no rate',
    file: lines(['Index,Outlet (V)', ...rows().map((i) => `${i},${V[i]}`)]),
    code: 'time.none',
    facts: { isNumbered: true, textColumn: null },
  },
  {
    title: 'times that are clock times, and no rate',
    file: lines([header, ...rows().map((i) => `12:00:00.${String(2 * i).padStart(4, '0')},${V[i]}`)]),
    code: 'time.none',
    facts: { textColumn: 'Time (s)' },
  },
  {
    title: 'one stamp far ahead of the others',
    file: lines([header, ...rows().map((i) => (i === 100 ? `0.9000,${V[i]}` : row(i)))]),
    code: 'time.backwards',
    line: 103,
  },
  {
    title: 'a column of nan',
    file: lines([header, ...rows().map((i) => `${timeOf(i).toFixed(4)},nan`)]),
    code: 'values.none',
  },
  {
    title: 'volts beyond what any instrument reads, but for some at zero',
    file: lines([
      header,
      ...rows().map((i) => `${timeOf(i).toFixed(4)},${i % 20 === 0 ? 0 : `${V[i]}e300`}`),
    ]),
    code: 'values.none',
  },
  {
    title: 'a time column alone',
    file: lines(['Time (s)', ...rows().map((i) => timeOf(i).toFixed(4))]),
    code: 'channels.none',
  },
  {
    title: 'a spectrum by its unit',
    file: lines(['Frequency (Hz),CH1 (dBV)', ...rows().map((i) => `${i * 50},${-20 - (i % 60)}`)]),
    code: 'file.spectrum',
    facts: { axis: 'Frequency' },
  },
  {
    title: 'a spectrum by its name, in volts',
    file: lines(['freq,magnitude', 'kHz,V', ...rows().map((i) => `${i * 50},${-20 - (i % 60)}`)]),
    code: 'file.spectrum',
    facts: { axis: 'freq' },
  },
  {
    title: 'a spectrum by a setting',
    file: lines(['Horizontal Units,Hz', 'X,CH1 (V)', ...rows().map((i) => `${i * 50},${-20 - (i % 60)}`)]),
    code: 'file.spectrum',
    facts: { axis: null },
  },
  {
    title: 'over 1 % of rows malformed',
    file: lines([header, ...rows().map((i) => (i % 50 === 20 ? 'x#,y' : row(i)))]),
    code: 'rows.malformed',
    facts: { malformed: 4, rows: 200, found: '"x#,y"' },
    line: 22,
  },
  {
    title: 'a square wave of which only the edges were kept',
    file: lines([
      header,
      ...rows(40).flatMap((i) => [
        `${(i * 0.01).toFixed(5)},${i % 2 === 0 ? -170 : 170}`,
        `${(i * 0.01 + 0.00002).toFixed(5)},${i % 2 === 0 ? 170 : -170}`,
      ]),
    ]),
    code: 'time.uneven',
    facts: { channel: 'Outlet' },
  },
];

describe('readCapture(bytes) refuses', () => {
  for (const { title, file, code, more, facts = {}, line } of refusals) {
    test(title, async () => {
      const bytes = typeof file === 'string' ? bytesOf(file) : file;
      await readsBothWays(bytes, {}, { end: 150, chunk: 100 });
      const error = errorOf(() => readCapture(bytes));
      expect(error.code).toBe(code);
      expect(error.problem).toBe(more === undefined ? code : `${code}.${more}`);
      expect(error.facts).toMatchObject(facts);
      expect(error.place).toEqual(line === undefined ? {} : { line });
    });
  }
});

function errorOf(read: () => unknown): MeasureError {
  try {
    read();
  } catch (error) {
    if (error instanceof MeasureError) return error;
    throw error;
  }
  throw new Error('the file was read');
}
