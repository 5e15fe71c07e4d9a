import { type LayoutCase, testLayouts } from './layoutCase.ts';
import { amperes, INTERVAL_S, lines, rows, START_S, sampled, timeOf, volts } from './wave.ts';

const V = sampled(volts);
const A = sampled(amperes);
const LONG = sampled(volts, 700);
const P = V.map((v, i) => Number((v * A[i]!).toFixed(1)));
const time = { startS: START_S, intervalS: INTERVAL_S };
const stamp = (i: number): string => timeOf(i).toFixed(4);

const cases: LayoutCase[] = [
  {
    title: 'the number of a device is neither time nor count, though it rises',
    file: lines([
      'Rate,5000',
      'Device,Outlet (V)',
      ...rows().map((i) => `${100 + Math.floor(i / 20)},${V[i]}`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [
      ['Device', '', rows().map((i) => 100 + Math.floor(i / 20))],
      ['Outlet', 'V', V],
    ],
    quantities: ['other', 'voltage'],
  },
  {
    title: 'a counter that stays where it is places no rows',
    file: lines(['Rate,5000', 'Counter,Outlet (V)', ...rows().map((i) => `7,${V[i]}`)]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'a counter of one byte that starts anew is one record all along',
    file: lines(['Rate,5000', 'Counter,Outlet (V)', ...LONG.map((v, i) => `${i % 256},${v}`)]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['Outlet', 'V', LONG]],
    notices: ['rows.counter'],
  },
  {
    title: 'so is one of a hundred whose first count begins anywhere, a row lost where it starts anew',
    file: lines([
      'Rate,5000',
      'n,Outlet (V)',
      ...rows()
        .filter((i) => i !== 143)
        .map((i) => `${(i + 57) % 100},${V[i]}`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['Outlet', 'V', V.map((v, i) => (i === 143 ? Number.NaN : v))]],
    notices: ['rows.counter', 'gaps.found'],
  },
  {
    title: 'the number of a device in turn is none of a row, whatever stands above it',
    file: lines(['Unit,Time (s),Voltage', ...rows().map((i) => `${i % 7},${stamp(i)},${V[i]}`)]),
    ...time,
    channels: [
      ['Unit', '', rows().map((i) => i % 7)],
      ['Voltage', 'V', V],
    ],
    quantities: ['other', 'voltage'],
    notices: ['unit.assumed'],
  },
  {
    title: 'numbers that start anew with another record are two records',
    file: lines([
      'Rate,5000',
      'n,Outlet (V)',
      ...rows().map((i) => `${i},${V[i]}`),
      ...rows().map((i) => `${i},${V[i]}`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['Outlet', 'V', V]],
    notices: ['segments.first'],
  },
  ...[
    'Sample count,Voltage',
    'Time scale,Voltage',
    'Time interval,CH1',
    'Time count,Voltage',
    'Count,Voltage',
  ].map(
    (names): LayoutCase => ({
      title: `two names in one row, of an axis and a function, are no setting: ${names}`,
      file: lines(['Rate,5000', names, ...rows().map((i) => `${i},${V[i]}`)]),
      startS: 0,
      intervalS: INTERVAL_S,
      channels: [[names.split(',')[1]!, 'V', V]],
      notices: ['unit.assumed'],
    }),
  ),
  {
    title: 'a spectrum below the wave is left out, and said',
    file: lines([
      'Time (s),Outlet (V)',
      ...rows().map((i) => `${stamp(i)},${V[i]}`),
      '',
      'Frequency (Hz),Level (dB)',
      ...rows().map((i) => `${i * 25},${-20 - (i % 40)}`),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['segments.first'],
  },
  {
    title: 'a computed product in W and an event flag are no voltages',
    file: lines([
      'Time (s),Outlet (V),Load (A),Power (W),Event',
      ...rows().map((i) => `${stamp(i)},${V[i]},${A[i]},${P[i]},${i % 50 === 0 ? 1 : 0}`),
    ]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Load', 'A', A],
      ['Power', 'W', P],
      ['Event', '', rows().map((i) => (i % 50 === 0 ? 1 : 0))],
    ],
    quantities: ['voltage', 'current', 'other', 'other'],
  },
  {
    title: 'an event column that is mostly empty does not make its rows malformed',
    file: lines([
      'Time (s),Outlet (V),Event',
      ...rows().map((i) => `${stamp(i)},${V[i]},${i % 50 === 0 ? 'mark' : ''}`),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'minimum and maximum of a channel are an envelope, no voltages',
    file: lines([
      'Time (s),CH1 (V),CH1 min (V),CH1 max (V)',
      ...rows().map((i) => `${stamp(i)},${V[i]},${V[i]! - 2},${V[i]! + 2}`),
    ]),
    ...time,
    channels: [
      ['CH1', 'V', V],
      ['CH1 min', 'V', V.map((v) => v - 2)],
      ['CH1 max', 'V', V.map((v) => v + 2)],
    ],
    notices: ['columns.skipped'],
    quantities: ['voltage', 'other', 'other'],
  },
  {
    title: 'a column of comments, commas in them',
    file: lines([
      'Time (s),Outlet (V),Comment',
      ...rows().map((i) => `${stamp(i)},${V[i]},"fan on, row ${i}"`),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
    notices: ['columns.skipped'],
  },
  {
    title: 'an index beside the time is no channel',
    file: lines(['Index,Time (s),Outlet (V)', ...rows().map((i) => `${i},${stamp(i)},${V[i]}`)]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'a time column behind the values',
    file: lines(['Outlet (V),Load (A),Time (s)', ...rows().map((i) => `${V[i]},${A[i]},${stamp(i)}`)]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Load', 'A', A],
    ],
  },
  {
    title: 'a time column per channel, of one clock',
    file: lines([
      'Time A (s),A (V),Time B (s),B (V)',
      ...rows().map((i) => `${stamp(i)},${V[i]},${stamp(i)},${-V[i]!}`),
    ]),
    ...time,
    channels: [
      ['A', 'V', V],
      ['B', 'V', V.map((v) => -v)],
    ],
  },
  {
    title: 'two exports side by side: the first is read, though it is the shorter',
    file: lines([
      'Time (s),CH1 (V),,Time (s),CH1 (V)',
      ...rows(240).map((i) => `${i < 200 ? `${stamp(i)},${V[i]}` : ','},,${(i * 1e-3).toFixed(3)},${i % 7}`),
    ]),
    ...time,
    channels: [['CH1', 'V', V]],
    notices: ['columns.skipped'],
  },
  {
    title: 'two exports side by side, each with settings beside its rows',
    file: lines(
      rows().map((i) => {
        const settings = (source: string): string =>
          [`Source,${source},`, 'Vertical Units,V,', 'Horizontal Units,s,', 'Sample Interval,2e-4,'][i] ??
          ',,';
        return `${settings('CH1')},${stamp(i)},${V[i]},${settings('CH2')},${stamp(i)},${-V[i]!}`;
      }),
    ),
    ...time,
    channels: [
      ['CH1', 'V', V],
      ['CH2', 'V', V.map((v) => -v)],
    ],
  },
];

testLayouts(cases);
