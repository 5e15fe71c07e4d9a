import { type LayoutCase, testLayouts } from './layoutCase.ts';
import { amperes, INTERVAL_S, lines, rows, START_S, sampled, timeOf, volts } from './wave.ts';

const V = sampled(volts);
const A = sampled(amperes);
const time = { startS: START_S, intervalS: INTERVAL_S };
const values = V.map((v) => `${v}`);
const one: LayoutCase['channels'] = [['Outlet', 'V', V]];

const interval = (title: string, settings: string[], startS = 0): LayoutCase => ({
  title,
  file: lines([...settings, 'Outlet (V)', ...values]),
  startS,
  intervalS: INTERVAL_S,
  channels: one,
});

const cases: LayoutCase[] = [
  {
    title: 'volts a division and their unit, in as many cells as there are columns',
    file: lines([
      'Vertical Scale,50,V',
      'Counts per div,25',
      'Zero level,128',
      'Sample Interval,2e-4',
      'Units,counts',
      'Index,CH1',
      ...rows().map((i) => `${i},${128 + i}`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    // 50 V a division of 25 codes: 2 V a code.
    channels: [['CH1', 'V', rows().map((i) => 2 * i)]],
  },
  {
    title: 'a setting right above a single column of codes is no name',
    file: lines([
      'Sample Rate,5000',
      'Volts per count,2',
      'Zero level,128',
      ...rows().map((i) => `${128 + i}`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['column 1', 'V', rows().map((i) => 2 * i)]],
  },
  interval('an interval with its unit in the next cell', ['Sample Interval,0.2,ms']),
  interval('an interval with its unit in brackets', ['Sampling period (us),200']),
  interval('an interval without a unit is in seconds', ['Sample Interval:,2.0E-04']),
  interval('an interval and its unit in one cell', ['sample interval = 200us']),
  interval('a sample rate with its unit', ['Sample Rate: 5.00kSa/s']),
  interval('a sample rate without a unit is in hertz', ['Sample Rate,5000']),
  interval('a sample rate in hertz with a prefix', ['Sampling frequency,5 kHz']),
  interval('samples per second, in words', ['Samples per second,5000']),
  interval('a bare word before the rate', ['Sampling: 5 kSa/s']),
  interval('a start beside the interval', ['X increment,2e-4', 'X origin,-7.2e-3'], -0.0072),
  interval('a trigger at a sample', ['Sample Interval,2e-4,s', 'Trigger Point,36,Samples'], -0.0072),
  {
    title: 'an interval in a head that is parted by blanks',
    file: lines(['Sample interval 2e-4 s', ...values]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['column 1', 'V', V]],
    notices: ['unit.assumed'],
  },
  interval('pairs of key and value in one line', [
    'Model,shelf,Memory Length,200,Sampling Period,2.0E-04,Mode,Normal',
  ]),
  interval('keys of joined words', ['"BlockSize",200', '"HResolution",2.0E-04', '"HUnit","s"']),
  interval('a head longer than the body', ['Sample Rate,5000', ...rows(1000).map((i) => `Key ${i},${i}`)]),
  interval('commented keys', ['# SampleRate = 5000', '# Date = 3 May']),
  {
    title: 'settings, then rows that start with an empty cell',
    file: lines([
      '"TraceName","Outlet"',
      '"VUnit","kV"',
      '"HUnit","ms"',
      ...rows().map((i) => `,${(timeOf(i) * 1e3).toFixed(1)},${(V[i]! / 1e3).toFixed(5)}`),
    ]),
    ...time,
    channels: one,
  },
  {
    title: 'settings of several columns over rows that start with an empty cell',
    file: lines([
      'Channels\t2',
      'Y_Unit_Label\tVolts\tAmps',
      'X0\t-7.2E-3\t-7.2E-3',
      'Delta_X\t2.0E-4\t2.0E-4',
      '\tOutlet\tLoad',
      ...rows().map((i) => `\t${V[i]}\t${A[i]}`),
    ]),
    ...time,
    channels: [
      ['Outlet', 'V', V],
      ['Load', 'A', A],
    ],
  },
  {
    title: 'one setting for all channels in one cell, over columns called Value',
    file: lines([
      'Vertical Units,CH1:V CH2:A',
      'Second,Value,Value',
      ...rows().map((i) => `${timeOf(i).toFixed(4)},${V[i]},${A[i]}`),
    ]),
    ...time,
    channels: [
      ['CH1', 'V', V],
      ['CH2', 'A', A],
    ],
  },
  {
    title: 'whole volts printed with a mark are volts under a scale per division too',
    file: lines([
      'Source,CH1',
      'Vertical Units,V',
      'Vertical Scale,1.000E+02',
      'Sampling Period,2.0e-04',
      'Waveform Data,',
      ...rows().map((i) => `${(((i * 37) % 251) - 125).toFixed(1)},`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['CH1', 'V', rows().map((i) => ((i * 37) % 251) - 125)]],
  },
  {
    title: 'whole numbers under a scale per division are counts, whatever unit the scale has',
    file: lines([
      'Source,CH1',
      'Vertical Units,V',
      'Vertical Scale,1.000E+02',
      'Sampling Period,2.0e-04',
      'Waveform Data,',
      ...rows().map((i) => `${((i * 37) % 251) - 125},`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['CH1', 'counts', rows().map((i) => ((i * 37) % 251) - 125)]],
    notices: ['counts.unscaled'],
  },
  {
    title: 'numbered rows, start and increment on the header rows',
    file: lines([
      'X,CH1,CH2,Start,Increment,',
      `Sequence,Volt,Ampere,${START_S.toExponential(6)},2.000000e-04,`,
      ...rows().map((i) => `${i},${V[i]},${A[i]},`),
    ]),
    ...time,
    channels: [
      ['CH1', 'V', V],
      ['CH2', 'A', A],
    ],
  },
  {
    title: 'numbered rows from one, and a rate',
    file: lines(['Rate,5000', 'Index,Outlet (V)', ...rows().map((i) => `${i + 1},${V[i]}`)]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: one,
  },
  {
    title: 'a column of "time" that only counts, and an interval',
    file: lines(['Sample interval,200,us', 'Time,Outlet (V)', ...rows().map((i) => `${i},${V[i]}`)]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: one,
  },
  {
    title: 'nothing but values, and a rate from the person',
    file: lines(values),
    sampleRateHz: 5000,
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['column 1', 'V', V]],
    notices: ['unit.assumed'],
  },
  {
    title: 'a rate from the person beside a file that states its interval',
    file: lines(['Sample Interval,0.2,ms', 'Outlet (V)', ...values]),
    sampleRateHz: 1,
    startS: 0,
    intervalS: INTERVAL_S,
    channels: one,
    notices: ['time.rateIgnored'],
  },
  {
    title: 'a rate from the person beside a file that has times',
    file: lines(['Time (s),Outlet (V)', ...rows().map((i) => `${timeOf(i).toFixed(4)},${V[i]}`)]),
    sampleRateHz: 1,
    ...time,
    channels: one,
    notices: ['time.rateIgnored'],
  },
  {
    title: 'settings beside the first rows, blanks beside the later ones, times padded',
    file: lines(
      rows().map((i) => {
        const beside = [
          'Record Length,200,Points',
          'Sample Interval,2.000000e-04,s',
          'Trigger Point,36,Samples',
          ',,',
          'Source,CH1,',
          'Vertical Units,V,',
          'Horizontal Units,s,',
          'Probe Atten,1.000000e+02,',
          'Coupling,AC,',
        ][i];
        return `${beside ?? ',,'},${timeOf(i)
          .toFixed(4)
          .padStart(9, '0')
          .replace(/^(0+)-/, '-$1')},  ${V[i]!.toFixed(5)},`;
      }),
      '\r\n',
    ),
    ...time,
    channels: [['CH1', 'V', V]],
  },
  {
    title: 'units that stand in the settings only, one a channel',
    file: lines([
      'Channel,CH1,CH2',
      'Vertical Units,V,A',
      'Horizontal Units,s',
      ...rows().map((i) => `${timeOf(i).toFixed(4)},${V[i]},${A[i]}`),
    ]),
    ...time,
    channels: [
      ['CH1', 'V', V],
      ['CH2', 'A', A],
    ],
  },
  {
    title: 'a unit for every column, time included',
    file: lines([
      'Unit,ms,V,A',
      'Name,t,U,I',
      ...rows().map((i) => `${(timeOf(i) * 1e3).toFixed(1)},${V[i]},${A[i]}`),
    ]),
    ...time,
    channels: [
      ['U', 'V', V],
      ['I', 'A', A],
    ],
  },
  {
    title: 'converter counts with volts per count, reference and origin',
    file: lines([
      'X increment,2e-4',
      'Y increment,0.05,V',
      'Y reference,128',
      'Y origin,2.5,V',
      'Counts',
      ...rows().map((i) => `${(i * 37) % 251}`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['Counts', 'V', rows().map((i) => (((i * 37) % 251) - 128) * 0.05 + 2.5)]],
  },
  {
    title: 'converter counts, signed, whose unit and scale stand in the settings',
    file: lines([
      'Vertical Units,V',
      'Y increment,4e-2',
      'Y origin,0',
      'Time (s),CH1',
      ...rows().map((i) => `${timeOf(i).toFixed(4)},${((i * 37) % 251) - 125}`),
    ]),
    ...time,
    channels: [['CH1', 'V', rows().map((i) => (((i * 37) % 251) - 125) * 0.04)]],
  },
  {
    title: 'converter counts with volts and counts per division, one a channel',
    file: lines([
      'Sample rate,5 kHz',
      'Volts/div,2,5',
      'Counts per division,25',
      'Index,CH1 (counts),CH2 (counts)',
      ...rows().map((i) => `${i},${(i * 37) % 251},${(i * 53) % 241}`),
    ]),
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [
      ['CH1', 'V', rows().map((i) => ((i * 37) % 251) * (2 / 25))],
      ['CH2', 'V', rows().map((i) => ((i * 53) % 241) * (5 / 25))],
    ],
  },
  {
    title: 'converter counts without a scale stay counts',
    file: lines(['Time (s),ADC', ...rows().map((i) => `${timeOf(i).toFixed(4)},${(i * 37) % 251}`)]),
    ...time,
    channels: [['ADC', 'counts', rows().map((i) => (i * 37) % 251)]],
    notices: ['counts.unscaled'],
  },
];

testLayouts(cases);
