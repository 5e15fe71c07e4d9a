import { type LayoutCase, testLayouts } from './layoutCase.ts';
import { INTERVAL_S, lines, rows, START_S, sampled, timeOf, volts } from './wave.ts';

const V = sampled(volts);
const long = rows(5000);
const longVolts = long.map((i) => volts(i * 1.6e-6));
const outlet = (samples: readonly number[]): LayoutCase['channels'] => [['Outlet', 'V', samples]];
const file = (stamps: readonly string[], samples: readonly number[], ...head: string[]): string =>
  lines([...head, ...stamps.map((stamp, i) => `${stamp},${samples[i]}`)]);

const cases: LayoutCase[] = [
  {
    title: 'stamps that alternate 1 µs and 2 µs for a true 1.6 µs',
    file: file(
      long.map((i) => Math.floor(i * 1.6).toFixed(0)),
      longVolts,
      'Time (us),Outlet (V)',
    ),
    startS: 0,
    intervalS: 1.6e-6,
    channels: outlet(longVolts),
    notices: ['time.coarse'],
    // Stamps cut to 1 µs over a record of 8000: a tick at one end.
    intervalWithin: 1 / 8000,
  },
  {
    title: 'the same, with the interval in the settings',
    file: file(
      long.map((i) => Math.floor(i * 1.6).toFixed(0)),
      longVolts,
      'Sample interval,1.6,us',
      'Time (us),Outlet (V)',
    ),
    startS: 0,
    intervalS: 1.6e-6,
    channels: outlet(longVolts),
    notices: ['time.coarse'],
    // The interval is exact; the start is known to a tick in 8000.
    intervalWithin: 1 / 8000,
  },
  {
    title: 'stamps of which 98 % repeat',
    file: file(
      long.map((i) => `${(Math.round((i - 2500) / 50) * 0.05).toFixed(2)}E-3`),
      longVolts,
      'Time (s),Outlet (V)',
    ),
    startS: -2.5e-3,
    intervalS: 1e-6,
    channels: outlet(longVolts),
    notices: ['time.coarse'],
    // Stamps rounded to 50 µs over a record of 5 ms.
    intervalWithin: 50 / 5000,
  },
  {
    title: 'single-precision jitter in the last digits is even',
    file: file(
      rows().map((i) => Math.fround(timeOf(i)).toFixed(11)),
      V,
      'Time (s),Outlet (V)',
    ),
    startS: START_S,
    intervalS: INTERVAL_S,
    channels: outlet(V),
    // Single precision keeps 2^-24 of 32 ms, over a record of 40 ms.
    intervalWithin: 2 ** -24,
  },
  {
    title: 'single precision at a large time, two ticks to three an interval',
    file: file(
      long.map((i) => Math.fround(1000 + i * 1.5e-4).toFixed(9)),
      longVolts,
      'Time (s),Outlet (V)',
    ),
    startS: 1000,
    intervalS: 1.5e-4,
    channels: outlet(longVolts),
    notices: [],
    // One tick of 2^-14 s over a record of 0.75 s.
    intervalWithin: 2 ** -14 / 0.75,
  },
  {
    title:
      'the interval of the settings and the times differ by the unit: without a unit in the header the settings win',
    file: file(
      rows().map((i) => (timeOf(i) * 1e3).toFixed(1)),
      V,
      'Sample interval,2e-4,s',
      'Time,Outlet (V)',
    ),
    startS: START_S,
    intervalS: INTERVAL_S,
    channels: outlet(V),
    notices: ['time.disagrees'],
  },
  {
    title: 'a header that says s over times in ms: span and interval in the settings win',
    file: file(
      rows().map((i) => (timeOf(i) * 1e3).toFixed(1)),
      V,
      'Sample interval,2e-4,s',
      'Duration,40,ms',
      'Time (s),Outlet (V)',
    ),
    startS: START_S,
    intervalS: INTERVAL_S,
    channels: outlet(V),
    notices: ['time.disagrees'],
  },
  {
    title: 'an interval in the settings that fits neither count nor span loses',
    file: file(
      rows().map((i) => timeOf(i).toFixed(4)),
      V,
      'Sample interval,1.25e-4,s',
      'Duration,40,ms',
      'Time (s),Outlet (V)',
    ),
    startS: START_S,
    intervalS: INTERVAL_S,
    channels: outlet(V),
    notices: ['time.disagrees'],
  },
  {
    title: 'an interval in the settings that is only rounded is no disagreement',
    file: file(
      long.map((i) => (i / 12000).toFixed(9)),
      longVolts,
      'Sample interval,8.33e-05,s',
      'Time (s),Outlet (V)',
    ),
    startS: 0,
    intervalS: 1 / 12000,
    channels: outlet(longVolts),
    // A nanosecond over a record of 0.4 s.
    intervalWithin: 1e-9 / 0.4,
  },
];

testLayouts(cases);
