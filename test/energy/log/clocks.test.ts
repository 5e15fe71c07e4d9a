import { type LogCase, lines, testLogs } from './logCase.ts';

/** Twelve rows a minute apart, of invented watts. */
const count = 12;
const rows = Array.from({ length: count }, (_, row) => row);
const watts = rows.map((row) => 100 + ((row * 7) % 5));
const everyS = (step: number): number[] => rows.map((row) => row * step);
const two = (n: number): string => String(n).padStart(2, '0');
const log = (stamps: readonly string[], head = 'Time,Power (W)'): string =>
  lines(
    head,
    rows.map((row) => `${stamps[row]},${watts[row]}`),
  );

const cases: LogCase[] = [
  {
    title: 'elapsed seconds, named with their unit',
    file: log(
      rows.map((row) => (row * 60).toFixed(1)),
      'Elapsed (s),Power (W)',
    ),
    timesS: everyS(60),
    watts,
    clock: { kind: 'elapsed', stepS: 1, startTime: null },
    written: 'seconds',
  },
  {
    title: 'elapsed hours',
    file: log(
      rows.map((row) => String(row / 4)),
      'Time (h),Power (W)',
    ),
    timesS: everyS(900),
    watts,
    written: 'hours',
  },
  {
    title: 'seconds that no unit names are said to be assumed',
    file: log(rows.map((row) => String(row * 5))),
    timesS: everyS(5),
    watts,
    notices: ['clock.assumed'],
  },
  {
    title: 'hours and minutes',
    file: log(rows.map((row) => `${Math.floor((row * 25) / 60)}:${two((row * 25) % 60)}`)),
    timesS: everyS(1500),
    watts,
    clock: { kind: 'elapsed', stepS: 60 },
    written: 'H:MM',
  },
  {
    title: 'hours beyond a day, with minutes and seconds',
    file: log(rows.map((row) => `${20 + row}:00:0${row % 10}`)),
    timesS: rows.map((row) => row * 3600 + (row % 10)),
    watts,
    written: 'H:MM:SS',
  },
  {
    title: 'thousandths behind a third colon',
    file: log(rows.map((row) => `00:00:${two(row)}:${String(row * 5).padStart(3, '0')}`)),
    timesS: rows.map((row) => row * 1.005),
    watts,
    clock: { stepS: 0.001 },
    written: 'H:MM:SS:mmm',
  },
  {
    title: 'days in words before the time, from the second day on',
    file: log(rows.map((row) => (row < 6 ? `${two(18 + row)}:00:00` : `"1 day, ${row - 6}:00:00"`))),
    timesS: everyS(3600),
    watts,
    written: 'days and time',
  },
  {
    title: 'a time in words',
    file: log(rows.map((row) => `${Math.floor(row / 6)}h ${(row % 6) * 10}m 5s`)),
    timesS: everyS(600),
    watts,
    written: 'days and time',
  },
  {
    title: 'a time of day over midnight',
    file: log(rows.map((row) => `${two((23 + Math.floor(row / 6)) % 24)}:${two((row % 6) * 10)}:00`)),
    timesS: everyS(600),
    watts,
    clock: { kind: 'elapsed', startTime: null },
  },
  {
    title: 'ISO 8601 with a zone',
    file: log(rows.map((row) => `2026-03-01T10:${two(row * 2)}:00+02:00`)),
    timesS: everyS(120),
    watts,
    clock: { kind: 'absolute', stepS: 1, startTime: '2026-03-01T10:00:00+02:00' },
    written: 'ISO 8601',
  },
  {
    title: 'ISO 8601 without a zone, its fraction always zero',
    file: log(
      rows
        .map((row) => `2026-02-28 23:${two(50 + (row % 10))}:00.000000`)
        .map((s, row) => (row < 10 ? s : `2026-03-01 00:0${row - 10}:00.000000`)),
    ),
    timesS: everyS(60),
    watts,
    clock: { kind: 'absolute', stepS: 1, startTime: '2026-02-28T23:50:00' },
  },
  {
    title: 'a day above 12 proves the order',
    file: log(rows.map((row) => `13/02/2026 08:${two(row)}:00`)),
    timesS: everyS(60),
    watts,
    clock: { startTime: '2026-02-13T08:00:00' },
    written: 'd/m/y',
  },
  {
    title: 'a month first, with afternoons, proved by a day above 12',
    file: log(
      rows.map(
        (row) =>
          `2/13/2026 ${[11, 12, 1][Math.floor(row / 4)]}:${two((row % 4) * 15)}:00 ${row < 4 ? 'AM' : 'PM'}`,
      ),
    ),
    timesS: everyS(900),
    watts,
    clock: { startTime: '2026-02-13T11:00:00' },
    written: 'm/d/y',
  },
  {
    title: 'rows that go on over midnight under one order only prove it',
    file: log(
      rows.map((row) => (row < 6 ? `03/02/2026 23:${two(54 + row)}:00` : `04/02/2026 00:0${row - 6}:00`)),
    ),
    timesS: everyS(60),
    watts,
    clock: { startTime: '2026-02-03T23:54:00' },
    written: 'd/m/y',
  },
  {
    title: 'within a day either order gives the same seconds, and the date stays unknown',
    file: log(rows.map((row) => `03/02/2026 20:${two(row)}:00`)),
    timesS: everyS(60),
    watts,
    clock: { kind: 'absolute', startTime: null },
    written: 'd/m/y or m/d/y',
  },
  {
    title: 'the order is told where nothing proves it',
    file: log(rows.map((row) => `0${1 + (row % 6)}/0${row < 6 ? 2 : 3}/2026 20:00:00`)),
    options: { timeOrder: 'day-month' },
    timesS: rows.map((row) => ((row % 6) + (row < 6 ? 0 : 28)) * 86_400),
    watts,
    written: 'd/m/y',
  },
  {
    title: 'seconds since 1970',
    file: log(
      rows.map((row) => String(1_780_000_000 + 60 * row)),
      'when,Power (W)',
    ),
    timesS: everyS(60),
    watts,
    clock: { kind: 'absolute', stepS: 1, startTime: '2026-05-28T20:26:40Z' },
    written: 'epoch seconds',
  },
  {
    title: 'milliseconds since 1970',
    file: log(
      rows.map((row) => String(1_780_000_000_000 + 60_250 * row)),
      'timestamp,Power (W)',
    ),
    timesS: everyS(60.25),
    watts,
    written: 'epoch milliseconds',
  },
  {
    title: 'microseconds since 1970',
    file: log(
      rows.map((row) => String(1_780_000_000_000_000 + 10_000_001 * row)),
      'timestamp,Power (W)',
    ),
    timesS: everyS(10.000001),
    watts,
    written: 'epoch microseconds',
  },
  {
    title: 'date and time in two columns',
    file: lines(
      'Date;Uhrzeit;Leistung (W)',
      rows.map((row) => `21.02.2026;07:${two(row)}:30;${watts[row]},0`),
    ),
    timesS: everyS(60),
    watts,
    clock: { startTime: '2026-02-21T07:00:30' },
    columns: [
      ['Date', 'time', ''],
      ['Uhrzeit', 'time', ''],
      ['Leistung (W)', 'power', 'W'],
    ],
  },
  {
    title: 'a month’s name',
    file: log(rows.map((row) => `2 Mar 2026 07:${two(row)}:30`)),
    timesS: everyS(60),
    watts,
    clock: { startTime: '2026-03-02T07:00:30' },
  },
  {
    title: 'of two clocks the one that never starts anew counts',
    file: lines(
      'StepTime(s),Total Time(s),Power (W)',
      rows.map((row) => `${(row % 4) * 60}.0,${row * 60}.0,${watts[row]}`),
    ),
    timesS: everyS(60),
    watts,
  },
  {
    title: 'clocks that disagree are said to',
    file: lines(
      'Host time,Device (s),Power (W)',
      rows.map((row) => `2026-03-01 10:${two(row * 5)}:00.000,${(row * 303).toFixed(2)},${watts[row]}`),
    ),
    timesS: everyS(300),
    watts,
    notices: ['clock.others'],
  },
  {
    title: 'stamps of whole minutes are spread inside the minute, a cut first one to its end',
    file: log(rows.map((row) => `2026-03-01 10:${two(Math.floor((row + 2) / 4))}`)),
    // Four rows a minute, of which the first minute lacks two.
    timesS: everyS(15),
    watts,
    clock: { stepS: 60 },
    notices: ['clock.equal'],
  },
  {
    title: 'a clock that is set back begins another part, and stays where it says',
    file: log(rows.map((row) => `2026-10-25 0${row < 6 ? 2 : 2}:${two(row < 6 ? 10 + row : row)}:00`)),
    timesS: rows.map((row) => (row < 6 ? row : row - 10) * 60),
    watts,
    also: { partStarts: [0, 6] },
    notices: ['clock.back'],
  },
  {
    title: 'two tests one below the other, each with its head and a clock of its own',
    file: lines(
      ['Bench load, test 1', 'Time (s),Power (W)'],
      rows.slice(0, 6).map((row) => `${row * 10},${watts[row]}`),
      ['', 'Bench load, test 2', 'Time (s),Power (W)'],
      rows.slice(6).map((row) => `${(row - 6) * 10},${watts[row]}`),
    ),
    timesS: everyS(10),
    watts,
    also: { partStarts: [0, 6] },
    notices: ['tests.stacked'],
  },
  {
    title: 'rows that only their order places, at the interval that the head gives',
    file: lines('Sample interval,30,s', 'Power (W)', watts.map(String)),
    timesS: everyS(30),
    watts,
    clock: { kind: 'rows', stepS: 30, startTime: null },
    notices: ['clock.rows'],
  },
];

testLogs(cases);
