import { type LayoutCase, testLayouts } from './layoutCase.ts';
import { amperes, INTERVAL_S, lines, rows, START_S, sampled, timeOf, volts } from './wave.ts';

const V = sampled(volts);
const A = sampled(amperes);
const time = { startS: START_S, intervalS: INTERVAL_S };
const body = (row: (t: number, v: number, a: number) => string): string[] =>
  rows().map((i) => row(timeOf(i), V[i]!, A[i]!));
const comma = body((t, v) => `${t.toFixed(4)},${v}`);
const commaBoth = body((t, v, a) => `${t.toFixed(4)},${v},${a}`);

const cases: LayoutCase[] = [
  {
    title: 'a mark of comment before names and units',
    file: lines(['#Time,Outlet,Load', '#s,V,A', ...commaBoth]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Load', 'A', A],
    ],
  },
  {
    title: 'an A behind a current is its unit',
    file: lines(['Time_s,Outlet_V,Load_Current_A', ...commaBoth]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Load_Current', 'A', A],
    ],
  },
  {
    title: 'a number of the segment before the time is no channel in volts',
    file: lines(['Segment,Time (s),Outlet (V)', ...comma.map((row) => `1,${row}`)]),
    ...time,
    channels: [
      ['Segment', '', V.map(() => 1)],
      ['Outlet', 'V', V],
    ],
  },
  {
    title: 'records without a header, one under the other',
    file: lines([...comma, ...comma]),
    ...time,
    channels: [['column 2', 'V', V]],
    notices: ['segments.first', 'time.assumed', 'unit.assumed'],
  },
  {
    title: 'units in brackets, round and square',
    file: lines(['Time (s),Outlet [V],Load (A)', ...commaBoth]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Load', 'A', A],
    ],
  },
  {
    title: 'units behind a slash, with prefixes',
    file: lines([
      't/ms,U/kV,I/mA',
      ...body((t, v, a) => `${(t * 1e3).toFixed(1)},${(v / 1e3).toFixed(5)},${(a * 1e3).toFixed(0)}`),
    ]),
    ...time,
    channels: [
      ['U', 'V', V],
      ['I', 'A', A],
    ],
  },
  {
    title: 'units in a row of their own, as words',
    file: lines(['Source,CH1,CH2', 'Second,Volt,Ampere', ...commaBoth]),
    ...time,
    channels: [
      ['CH1', 'V', V],
      ['CH2', 'A', A],
    ],
  },
  {
    title: 'units in a row of their own, in brackets, then a row of empty cells',
    file: lines([
      'Time;Kanal A;Kanal B',
      '(ms);(V);(A)',
      ';;',
      ...body((t, v, a) => `${(t * 1e3).toFixed(1)};${v};${a}`),
    ]),
    ...time,
    channels: [
      ['Kanal A', 'V', V],
      ['Kanal B', 'A', A],
    ],
  },
  {
    title: 'the comma stays the delimiter beside (ms),(V), before a blank line',
    file: lines(['Time,Channel A', '(ms),(V)', '', ...body((t, v) => `${(t * 1e3).toFixed(4)},${v}`)]),
    ...time,
    channels: [['Channel A', 'V', V]],
  },
  {
    title: 'one header row whose names are units, numbered',
    file: lines(['sec,Volt1,Volt2', ...body((t, v) => `${t.toExponential(6)},${v},${-v}`)]),
    ...time,
    channels: [
      ['Volt1', 'V', V],
      ['Volt2', 'V', V.map((v) => -v)],
    ],
  },
  {
    title: 'channels named 1, 2 and 4, explicit signs, engineering exponents',
    file: lines([
      'x-axis,1,2,4',
      'second,Volt,Volt,Volt',
      ...body((t, v) =>
        `${t < 0 ? '' : '+'}${(t * 1e3).toFixed(4)}E-03,+${v}E+00,${v}e0,${v}E+000`.replace('+-', '-'),
      ),
    ]),
    ...time,
    channels: [
      ['1', 'V', V],
      ['2', 'V', V],
      ['4', 'V', V],
    ],
  },
  {
    title: 'an empty first name, rows that end in comma and blank, a header that does not',
    file: lines(
      [',CH1,CH2', 'Second,Volt,Volt', ...body((t, v, a) => `${t.toExponential(5)},${v},${a}, `)],
      '\r\n',
    ),
    ...time,
    channels: [
      ['CH1', 'V', V],
      ['CH2', 'V', A],
    ],
  },
  {
    title: 'names without units: volts are assumed, and amperes where the name says current',
    file: lines([
      'Time (microseconds),V_ch1,I_ch1',
      ...body((t, v, a) => `${(t * 1e6).toFixed(2)},${v},${a}`),
    ]),
    ...time,
    channels: [
      ['V_ch1', 'V', V],
      ['I_ch1', 'A', A],
    ],
    notices: ['unit.assumed'],
  },
  {
    title: 'no unit anywhere: seconds and volts are assumed',
    file: lines(['TIME,CH2', ...comma]),
    ...time,
    channels: [['CH2', 'V', V]],
    notices: ['time.assumed', 'unit.assumed'],
  },
  {
    title: 'no header at all, blanks as delimiter, padded rows',
    file: lines(body((t, v, a) => `  ${t.toExponential(4)}   ${v.toFixed(2).padStart(8)}\t${a}`)),
    ...time,
    channels: [
      ['column 2', 'V', V],
      ['column 3', 'V', A],
    ],
    notices: ['time.assumed', 'unit.assumed'],
  },
  {
    title: 'a header with blanks in its names over rows parted by blanks',
    file: lines([
      'Time (s)  Outlet voltage (V)  Load current (A)',
      ...body((t, v, a) => `${t.toFixed(4)}  ${v}  ${a}`),
    ]),
    ...time,
    channels: [
      ['Outlet voltage', 'V', V],
      ['Load current', 'A', A],
    ],
  },
  {
    title: 'a commented header, underscores before the units',
    file: lines([
      '# time_ms,outlet_V,load_mA',
      ...body((t, v, a) => `${(t * 1e3).toFixed(1)},${v},${(a * 1e3).toFixed(0)}`),
    ]),
    ...time,
    channels: [
      ['outlet', 'V', V],
      ['load', 'A', A],
    ],
  },
  {
    title: 'a commented header over rows parted by blanks',
    file: lines(['# t[s] outlet[V]', ...body((t, v) => `${t.toFixed(4)} ${v}`)]),
    ...time,
    channels: [['outlet', 'V', V]],
  },
  {
    title: 'quoted cells, a quoted comment with commas above',
    file: lines([
      '"Shelf 4, unit 2, cold start","300 W, kettle"',
      '"Time (s)","Outlet (V)"',
      ...body((t, v) => `"${t.toFixed(4)}","${v}"`),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'a free-text comment with as many commas as the table has columns',
    file: lines([
      'Inverter from the blue box, 300 W, third try',
      'Time (s),Outlet (V),Load (A)',
      ...commaBoth,
    ]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Load', 'A', A],
    ],
  },
  {
    title: 'a trailing delimiter in rows and header',
    file: lines(['Time (s),Outlet (V),', ...comma.map((row) => `${row},`)]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'control characters in a name are shown as a mark',
    file: lines(['Time (s),Out\u0007let (V)', ...comma]),
    ...time,
    channels: [['Out\ufffdlet', 'V', V]],
  },
  {
    title: 'two channels of one name are told apart',
    file: lines(['Time (s),Outlet (V),Outlet (V)', ...body((t, v) => `${t.toFixed(4)},${v},${-v}`)]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Outlet (2)', 'V', V.map((v) => -v)],
    ],
  },
  {
    title: 'channels called A, B and C are voltages',
    file: lines(['Time (s),A,B,C', ...body((t, v) => `${t.toFixed(4)},${v},${v},${v}`)]),
    ...time,
    channels: [
      ['A', 'V', V],
      ['B', 'V', V],
      ['C', 'V', V],
    ],
    notices: ['unit.assumed'],
  },
  {
    title: 'capital letters all through the header',
    file: lines([
      'TIME(MS),OUTLET(MV)',
      ...body((t, v) => `${(t * 1e3).toFixed(1)},${(v * 1e3).toFixed(0)}`),
    ]),
    ...time,
    channels: [['OUTLET', 'V', V]],
  },
];

testLayouts(cases);
