import { describe, expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import type { Capture } from '../../../src/read/capture.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { someOf } from '../../samples.ts';
import { readsBothWays } from '../chunks/bothWays.ts';
import { bytesOf } from './layoutCase.ts';
import { amperes, INTERVAL_S, lines, rows, timeOf, volts } from './wave.ts';

const COUNT = 1000;
const every = rows(COUNT);
const V = every.map((i) => volts(timeOf(i)));
const A = every.map((i) => amperes(timeOf(i)));
const time = (i: number): string => timeOf(i).toFixed(4);

/** Reads a file in every way; the same must come of all. */
async function read(file: string): Promise<Capture | MeasureError> {
  const bytes = bytesOf(file);
  for (const chunk of [7, 100, 5000]) await readsBothWays(bytes, {}, { end: 150, chunk });
  try {
    return readCapture(bytes);
  } catch (error) {
    if (error instanceof MeasureError) return error;
    throw error;
  }
}

const isOneIn = (share: number) => (i: number) => i % share === share >> 1;

interface Damage {
  readonly title: string;
  readonly header: string;
  readonly row: (i: number) => string;
  readonly broken: (i: number) => string;
}

const two = { header: 'Time (s),Outlet (V)', row: (i: number) => `${time(i)},${V[i]}` };
const three = { header: 'Time (s),Outlet (V),Load (A)', row: (i: number) => `${time(i)},${V[i]},${A[i]}` };
const closed = { header: three.header, row: (i: number) => `${three.row(i)},` };
const damages: readonly Damage[] = [
  { title: 'a row that begins with a comma', ...two, broken: (i) => `,${two.row(i)}` },
  { title: 'a row without its time', ...two, broken: (i) => `,${V[i]}` },
  { title: 'a row with its time twice', ...two, broken: (i) => `${time(i)},${two.row(i)}` },
  { title: 'a row with its last cell twice', ...two, broken: (i) => `${two.row(i)},${V[i]}` },
  { title: 'three columns, one comma too many', ...three, broken: (i) => `${time(i)},,${V[i]},${A[i]}` },
  { title: 'three columns, a cell lost', ...three, broken: (i) => `${V[i]},${A[i]}` },
  { title: 'rows that end in a comma, a cell lost', ...closed, broken: (i) => `${V[i]},${A[i]},` },
  {
    title: 'rows that end in a comma, a cell twice',
    ...closed,
    broken: (i) => `${time(i)},${closed.row(i)}`,
  },
  {
    title: 'blanks between the cells, a number behind them',
    header: 'Time  Outlet',
    row: (i) => `${time(i)}  ${V[i]}`,
    broken: (i) => `${time(i)}  ${V[i]}  ${V[i]}`,
  },
];

describe.each(someOf(damages, 2))('$title', ({ header, row, broken }) => {
  test('is left out and said where it is one row in 200', async () => {
    const isBroken = isOneIn(200);
    const capture = await read(lines([header, ...every.map((i) => (isBroken(i) ? broken(i) : row(i)))]));
    if (capture instanceof MeasureError) throw capture;
    expect(capture.notices.map(({ code }) => code)).toContain('rows.malformed');
    // Rows 100, 300 and so on stand below the header, counted from 1.
    expect(capture.notices.find(({ code }) => code === 'rows.malformed')).toMatchObject({
      ...{ lines: [102, 302, 502], more: 2 },
    });
    expect(capture.sampleCount).toBe(COUNT);
    // Stamps are printed to the interval itself: what is left is rounding of doubles.
    expect(Math.abs(capture.intervalS / INTERVAL_S - 1)).toBeLessThan(1e-9);
    capture.channels[0].samples.forEach((sample, i) => {
      if (isBroken(i)) expect(sample).toBeNaN();
      else expect(sample).toBe(V[i]);
    });
  });

  test('is an error that names the first line where it is one row in 25', async () => {
    const isBroken = isOneIn(25);
    const error = await read(lines([header, ...every.map((i) => (isBroken(i) ? broken(i) : row(i)))]));
    expect(error).toBeInstanceOf(MeasureError);
    expect((error as MeasureError).code).toBe('rows.malformed');
    expect((error as MeasureError).place.line).toBe(14);
  });
});

test('rows of other widths that mean no damage are read: remarks, settings beside, lost trailing cells', async () => {
  const files = [
    [two.header, ...every.map((i) => (i % 9 === 4 ? `${two.row(i)},remark` : two.row(i)))],
    [two.header, ...every.map((i) => (i % 9 === 4 ? `${two.row(i)},,` : two.row(i)))],
    [`${two.header},,Rate,5000`, ...every.map((i) => (i === 0 ? `${two.row(i)},,Probe,1` : two.row(i)))],
    [`${two.header},Mark`, ...every.map((i) => (i % 50 === 7 ? `${two.row(i)},1` : two.row(i)))],
    // Another table beside the first, shorter, its cells dropped where it ends.
    [
      `${two.header},,Time (s),Other (V)`,
      ...every.map((i) => (i < 200 ? `${two.row(i)},,${i}e-6,1.5` : two.row(i))),
    ],
    [closed.header, ...every.map((i) => (i % 9 === 4 ? three.row(i) : closed.row(i)))],
  ];
  for (const file of files) {
    const capture = await read(lines(file));
    if (capture instanceof MeasureError) throw capture;
    expect(capture.notices.map(({ code }) => code)).not.toContain('rows.malformed');
    expect(Array.from(capture.channels[0].samples)).toEqual(V);
  }
});

test('row numbers that repeat are said from the first', async () => {
  const numbered = (isTwice: (i: number) => boolean): string =>
    lines([
      'Rate,5000',
      'No.,Outlet (V)',
      ...every.flatMap((i) => (isTwice(i) ? [`${i},${V[i]}`, `${i},${V[i]}`] : [`${i},${V[i]}`])),
    ]);
  const once = await read(numbered((i) => i === 500));
  if (once instanceof MeasureError) throw once;
  expect(once.notices).toContainEqual({
    ...{ code: 'rows.malformed', lines: [504], more: 0, found: 'the number 500 again' },
  });
  expect(Array.from(once.channels[0].samples)).toEqual(V);
  const often = await read(numbered(isOneIn(50)));
  expect((often as MeasureError).code).toBe('rows.malformed');
});

test.each([0.5, 1.5])('a time that jumps by %s of a sample is said', async (jump) => {
  const at = (i: number): number => Number((timeOf(i) + (i >= 400 ? (jump - 1) * INTERVAL_S : 0)).toFixed(5));
  const file = lines([two.header, ...every.map((i) => `${at(i).toFixed(5)},${volts(at(i))}`)]);
  const capture = await read(file);
  if (capture instanceof MeasureError) throw capture;
  expect(capture.notices.map(({ code }) => code)).toContain('time.uneven');
});

test.each([
  ['the time column', ['Interval,1e-4,s', 'Increment,2e-4,s'], true, 'increment'],
  ['the record length', ['Interval,1e-4,s', 'Increment,2e-4,s', 'Duration,0.2,s'], false, 'increment'],
  ['another setting', ['Interval,1e-4,s', 'Increment,2e-4,s', 'Sample rate,5 kS/s'], false, 'increment'],
])('settings that contradict each other are named, and %s decides', async (_, head, hasTime, winner) => {
  const body = hasTime ? [two.header, ...every.map(two.row)] : ['Outlet (V)', ...V.map(String)];
  const capture = await read(lines([...head, ...body]));
  if (capture instanceof MeasureError) throw capture;
  // Stamps are printed to the interval itself: what is left is rounding of doubles.
  expect(Math.abs(capture.intervalS / INTERVAL_S - 1)).toBeLessThan(1e-9);
  expect(capture.notices).toContainEqual({
    ...{ code: 'time.contradicts', best: winner, isSupported: true },
    stated: [
      { key: 'interval', intervalS: expect.closeTo(1e-4, 12) },
      { key: 'increment', intervalS: expect.closeTo(2e-4, 12) },
    ],
  });
});
