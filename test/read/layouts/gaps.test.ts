import { type LayoutCase, testLayouts } from './layoutCase.ts';
import { INTERVAL_S, lines, rows, START_S, sampled, timeOf, volts } from './wave.ts';

const V = sampled(volts);
const time = { startS: START_S, intervalS: INTERVAL_S };
const header = 'Time (s),Outlet (V)';
const row = (i: number): string => `${timeOf(i).toFixed(4)},${V[i]!.toFixed(2)}`;
const without = (missing: readonly number[]): number[] =>
  V.map((v, i) => (missing.includes(i) ? Number.NaN : v));

const cases: LayoutCase[] = [
  ...['', 'inf', '-inf', 'nan', 'NaN', '****', '312.5*', 'OL', '∞', '-∞'].map(
    (mark): LayoutCase => ({
      title: `a cell "${mark}" is a gap that keeps its place`,
      file: lines([
        header,
        ...rows().map((i) =>
          i === 70 || i === 71 || i === 120 ? `${timeOf(i).toFixed(4)},${mark}` : row(i),
        ),
      ]),
      ...time,
      channels: [['Outlet', 'V', without([70, 71, 120])]],
      notices: ['gaps.found'],
    }),
  ),
  {
    title: 'a malformed row in the middle is a gap, and its line is named',
    file: lines([header, ...rows().map((i) => (i === 70 ? '0.00x8,1#2' : row(i)))]),
    ...time,
    channels: [['Outlet', 'V', without([70])]],
    notices: ['rows.malformed', 'gaps.found'],
  },
  {
    title: 'a remark between rows takes no place in time',
    file: lines([header, ...rows().flatMap((i) => (i === 70 ? ['kettle switched on', row(i)] : [row(i)]))]),
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['rows.malformed'],
  },
  {
    title: 'rows that are missing leave a gap',
    file: lines([
      header,
      ...rows()
        .filter((i) => i !== 70 && (i < 100 || i > 108))
        .map(row),
    ]),
    ...time,
    channels: [['Outlet', 'V', without([70, ...rows(9).map((i) => 100 + i)])]],
    notices: ['gaps.found'],
  },
  {
    title: 'one missing row is a gap, not a slower clock',
    file: lines([
      header,
      ...rows()
        .filter((i) => i !== 90)
        .map(row),
    ]),
    ...time,
    channels: [['Outlet', 'V', without([90])]],
    notices: ['gaps.found'],
  },
  {
    title: 'blank cells are not malformed rows, however many',
    file: lines([header, ...rows().map((i) => (i % 10 === 3 ? `${timeOf(i).toFixed(4)},` : row(i)))]),
    ...time,
    channels: [['Outlet', 'V', without(rows().filter((i) => i % 10 === 3))]],
    notices: ['gaps.found'],
  },
  {
    title: 'a last row cut in its time',
    file: `${lines([header, ...rows().map(row)])}0.03`,
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['rows.cut'],
  },
  {
    title: 'a last row cut in its value',
    file: `${lines([header, ...rows().map(row)])}0.0328,12.`,
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['rows.cut'],
  },
  {
    title: 'text and rows of empty cells below the table',
    file: lines([header, ...rows().map(row), ',', ',', 'end of record']),
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['rows.cut'],
  },
  {
    title: 'blank lines between rows hold no sample',
    file: lines([header, '', ...rows().flatMap((i) => [row(i), ''])]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'two records pasted one under the other: the first is read',
    file: lines([header, ...rows().map(row), '', header, ...rows().map(row)]),
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['segments.first'],
  },
  {
    title: 'a time that starts anew: the first record is read',
    file: lines([header, ...[...rows(), ...rows(), ...rows()].map(row)]),
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['segments.first'],
  },
  {
    title: 'records on one clock, far apart: the first is read',
    file: lines([
      header,
      ...rows().map(row),
      ...rows().map((i) => `${(7.12345 + timeOf(i)).toFixed(6)},${V[i]}`),
      ...rows().map((i) => `${(19.6789 + timeOf(i)).toFixed(6)},${V[i]}`),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['segments.first'],
  },
  {
    title: 'records without times, each under its own head',
    file: lines([
      ...['Rate,5000', 'Outlet (V)', ...V.map(String)],
      ...['Rate,5000', 'Outlet (V)', ...V.map(String)],
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['Outlet', 'V', V]],
    notices: ['segments.first'],
  },
];

testLayouts(cases);
