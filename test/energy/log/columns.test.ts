import { type LogCase, lines, testLogs } from './logCase.ts';

/** Thirty rows ten seconds apart of an invented discharge: volts sag while the current holds. */
const rows = Array.from({ length: 30 }, (_, row) => row);
const timesS = rows.map((row) => row * 10);
const volts = rows.map((row) => Number((13.2 - row * 0.04).toFixed(2)));
const amps = rows.map((row) => Number((4.9 + ((row * 3) % 4) / 100).toFixed(2)));
const watts = rows.map((row) => Number((volts[row]! * amps[row]!).toFixed(3)));
const elapsed = (row: number): string =>
  `0:0${Math.floor(row / 6)}:${String((row % 6) * 10).padStart(2, '0')}`;
/** Energy drawn up to a row, in Wh. */
const wattHours = rows.map((row) => watts.slice(0, row).reduce((sum, watt) => sum + (watt * 10) / 3600, 0));
const ampHours = rows.map((row) => amps.slice(0, row).reduce((sum, amp) => sum + (amp * 10) / 3600, 0));
const table = (head: string, row: (row: number) => string): string => lines(head, rows.map(row));

const cases: LogCase[] = [
  {
    title: 'volts, amperes and watts without units, told by their product',
    file: table(
      'time,voltage,current,power',
      (row) => `${elapsed(row)},${volts[row]},${amps[row]},${watts[row]}`,
    ),
    timesS,
    ...{ volts, amps, watts },
    also: { positive: 'discharge', side: 'dc' },
    notices: ['units.product'],
  },
  {
    title: 'milliwatts beside volts and amperes',
    file: table(
      'time,voltage (V),current (A),power',
      (row) => `${elapsed(row)},${volts[row]},${amps[row]},${(watts[row]! * 1000).toFixed(0)}`,
    ),
    timesS,
    ...{ volts, amps, watts },
    columns: [
      ['time', 'time', ''],
      ['voltage (V)', 'voltage', 'V'],
      ['current (A)', 'current', 'A'],
      ['power', 'power', 'mW'],
    ],
    notices: ['units.product'],
  },
  {
    title: 'all in millis, without a unit',
    file: table(
      'time,voltage,current',
      (row) => `${elapsed(row)},${(volts[row]! * 1000).toFixed(0)},${(amps[row]! * 1000).toFixed(0)}`,
    ),
    timesS,
    ...{ volts, amps },
    notices: ['units.assumed'],
  },
  {
    title: 'units in a line of their own',
    file: lines(
      'Time;Volts;Current',
      's;mV;mA',
      rows.map((row) => `${row * 10};${(volts[row]! * 1000).toFixed(0)};${(amps[row]! * 1000).toFixed(0)}`),
    ),
    timesS,
    ...{ volts, amps },
  },
  {
    title: 'no head: a column that is the product of two others is the power',
    file: lines(rows.map((row) => `${elapsed(row)},${amps[row]},${volts[row]},${watts[row]},21.5`)),
    timesS,
    watts,
    notices: ['columns.unnamed', 'units.assumed'],
  },
  {
    title: 'no head, and a rest in which the amperes are none: they are told from the volts',
    file: lines(
      rows.map((row) =>
        row < 25
          ? `${elapsed(row)},${amps[row]},${volts[row]},${watts[row]}`
          : `${elapsed(row)},0,${volts[row]},0`,
      ),
    ),
    timesS,
    volts,
    amps: amps.map((amp, row) => (row < 25 ? amp : 0)),
    watts: watts.map((watt, row) => (row < 25 ? watt : 0)),
    notices: ['columns.unnamed', 'units.product'],
  },
  {
    title: 'no head, and watts that are told',
    file: lines(rows.map((row) => `03/14/2026 08:0${elapsed(row).slice(3)};${watts[row]};7`)),
    options: { power: 'column 2=W' },
    timesS,
    watts,
  },
  {
    title: 'cumulative counters, told by their units',
    file: table(
      'time,V,A,Wh,Ah',
      (row) =>
        `${elapsed(row)},${volts[row]},${amps[row]},${wattHours[row]!.toFixed(4)},${ampHours[row]!.toFixed(4)}`,
    ),
    timesS,
    ...{ volts, amps },
    counters: [
      ['energy', 'cumulative', Number(wattHours[29]!.toFixed(4))],
      ['charge', 'cumulative', Number(ampHours[29]!.toFixed(4))],
    ],
    notices: ['units.assumed'],
  },
  {
    title: 'a counter without a unit, told by the course of the power',
    file: table(
      'time,Power (W),Energy',
      (row) => `${elapsed(row)},${watts[row]},${(wattHours[row]! * 1000).toFixed(2)}`,
    ),
    timesS,
    watts,
    counters: [['energy', 'cumulative', Number((wattHours[29]! * 1000).toFixed(2)) / 1000]],
  },
  {
    title: 'a rising counter is one, whatever its numbers add up to',
    file: table(
      't_ms,mW,mWh',
      // All together they are what flows.
      (row) => `${row * 10_000},5000,${((row * 50_000) / 3600 / 15).toFixed(3)}`,
    ),
    timesS,
    watts: rows.map(() => 5),
    counters: [['energy', 'cumulative', Number(((29 * 50_000) / 3600 / 15).toFixed(3)) / 1000]],
  },
  {
    title: 'two tests side by side: the one told has its own time',
    file: table(
      'Time (s),V1 (V),I1 (A),Time (s),V2 (V),I2 (A)',
      (row) => `${row * 7},3.9,0.5,${row * 10},${volts[row]},${amps[row]}`,
    ),
    options: { volts: 'V2', amps: 'I2' },
    timesS,
    ...{ volts, amps },
    notices: [],
  },
  {
    title: 'energy per interval',
    file: table('time,Energy (Wh)', (row) => `${elapsed(row)},${((watts[row]! * 10) / 3600).toFixed(4)}`),
    timesS,
    counters: [['energy', 'per interval', Number(((watts[29]! * 10) / 3600).toFixed(4))]],
  },
  {
    title: 'what is left, and the modes that say which way',
    file: lines(
      'epoch,status,left (mWh)',
      rows.map(
        (row) =>
          `${1_780_000_000 + row * 10},${row < 20 ? 'Discharging' : 'Charging'},${row < 20 ? 50_000 - row * 100 : 48_000 + (row - 20) * 150}`,
      ),
    ),
    timesS,
    counters: [['energy', 'remaining', 49.35]],
    also: { modes: rows.map((row) => (row < 20 ? 'discharge' : 'charge')) },
  },
  {
    title: 'a counter that starts anew with each step, and counts a discharge below zero',
    file: lines(
      'Time(s),Current(A),Voltage(V),Capacity(Ah),Mode',
      rows.map((row) =>
        row < 15
          ? `${row * 10},5.00,${volts[29 - row]},${(row * 0.0139).toFixed(4)},CHRG`
          : `${row * 10},-5.00,${volts[row]},${(-(row - 15) * 0.0139).toFixed(4)},DCHG`,
      ),
    ),
    timesS,
    volts: rows.map((row) => (row < 15 ? volts[29 - row]! : volts[row]!)),
    amps: rows.map((row) => (row < 15 ? 5 : -5)),
    counters: [['charge', 'cumulative', 0.1946]],
    also: { positive: 'charge' },
  },
  {
    title: 'readings of either sign: volts that fall while they are positive make them a discharge',
    file: table(
      'Time (s),Battery voltage (V),Battery current (A)',
      (row) => `${row * 10},${row < 20 ? volts[row] : volts[39 - row]},${row < 20 ? amps[row] : -2}`,
    ),
    timesS,
    volts: rows.map((row) => (row < 20 ? volts[row]! : volts[39 - row]!)),
    amps: rows.map((row) => (row < 20 ? amps[row]! : -2)),
    also: { positive: 'discharge', side: 'dc' },
  },
  {
    title: 'watts below volts times amperes of a mains are of AC',
    file: table(
      'Timestamp,Voltage (V),Current (A),Power (W)',
      (row) => `2026-03-01 10:0${elapsed(row).slice(3)},120.${row % 10},2.5,210.${row % 10}`,
    ),
    timesS,
    volts: rows.map((row) => 120 + (row % 10) / 10),
    amps: rows.map(() => 2.5),
    watts: rows.map((row) => 210 + (row % 10) / 10),
    also: { side: 'ac' },
  },
  {
    title: 'long: the metric that is told, not mixed with the other',
    file: lines(
      'ts,metric,value',
      rows.flatMap((row) => [
        `2026-03-01T10:0${elapsed(row).slice(3)}.000Z,outlet_power_watts,${watts[row]}`,
        ...(row % 3 === 0
          ? [`2026-03-01T10:0${elapsed(row).slice(3)}.400Z,board_power_watts,${900 + row}`]
          : []),
      ]),
    ),
    options: { power: 'outlet_power_watts' },
    timesS,
    watts,
    columns: [
      ['ts', 'time', ''],
      ['outlet_power_watts', 'power', 'W'],
      ['board_power_watts', 'power', 'W'],
    ],
  },
  {
    title: 'long: volts and amperes of one stamp stand side by side, one metric behind the other',
    file: lines(
      'time;sensor;reading;unit',
      rows.map((row) => `${elapsed(row)};battery_voltage;${String(volts[row]).replace('.', ',')};V`),
      rows.map((row) => `${elapsed(row)};battery_current;${String(amps[row]).replace('.', ',')};A`),
    ),
    timesS,
    ...{ volts, amps },
    also: { side: 'dc' },
  },
  {
    title: 'kept on change: each reading holds until the next',
    file: lines(
      'last_changed,state',
      Array.from(
        { length: 40 },
        (_, row) =>
          `${`2026-03-01T10:00:00.${String(row).padStart(3, '0')}Z`.replace(
            /10:00:00/,
            clockOf(7 * row * row + row),
          )},${100 + row}`,
      ),
    ).replace('state', 'Power (W)'),
    timesS: Array.from({ length: 40 }, (_, row) => 7 * row * row + row + row / 1000),
    watts: Array.from({ length: 40 }, (_, row) => 100 + row),
    also: { sampling: 'held from the row' },
  },
  {
    title: 'means of the interval, as the name says',
    file: table('Time (s),Average power (W)', (row) => `${row * 10},${watts[row]}`),
    timesS,
    watts,
    also: { sampling: 'mean until the row' },
  },
  {
    title: 'decimal commas in quotes with the unit behind, an empty line after each row',
    file: lines(
      '"Time","Power","Energy"',
      rows.flatMap((row) => [
        `"${elapsed(row)}","${watts[row]!.toFixed(3).replace('.', ',')} W","${wattHours[row]!.toFixed(3).replace('.', ',')} Wh"`,
        '',
      ]),
    ),
    timesS,
    watts,
    counters: [['energy', 'cumulative', Number(wattHours[29]!.toFixed(3))]],
  },
  {
    title: 'the first row glued to the head',
    file: table('time,volts,amps', (row) => `${elapsed(row)},${volts[row]},${amps[row]}`).replace('\n', ''),
    timesS,
    ...{ volts, amps },
  },
  {
    title: 'byte literals, a percent sign and a list with commas in quotes',
    file: table(
      'time,Power (W),Charge,source',
      (row) => `${elapsed(row)},b'${watts[row]}',${99 - row}%,"['port1', 'port2']"`,
    ),
    timesS,
    watts,
    counters: [],
  },
  {
    title: 'names three times over, and empty ones',
    file: table(
      'n,Time (s),Loop,Loop,Loop,,Power (W)',
      (row) => `${row + 1},${row * 10},1,1,1,x,${watts[row]}`,
    ),
    timesS,
    watts,
    columns: [
      ['n', 'row number', ''],
      ['Time (s)', 'time', 's'],
      ['Loop (column 3)', 'other', ''],
      ['Loop (column 4)', 'other', ''],
      ['Loop (column 5)', 'other', ''],
      ['column 6', 'other', ''],
      ['Power (W)', 'power', 'W'],
    ],
  },
  {
    title: 'labels over values, then the rows, then totals',
    file: lines(
      ['Rated Capacity,Tested Capacity', '2.00 Ah,0.40 Ah', '', 'Time (s),Voltage (V),Current (A)'],
      rows.map((row) => `${row * 10},${volts[row]},${amps[row]}`),
      ['', 'Total energy: 5.120 Wh', 'Total charge,0.401,Ah'],
    ),
    timesS,
    ...{ volts, amps },
    also: {
      totals: [
        { quantity: 'charge', value: 0.4, place: 'head' },
        { quantity: 'energy', value: 5.12, place: 'foot' },
        { quantity: 'charge', value: 0.401, place: 'foot' },
      ],
    },
  },
  {
    title: 'a cell without a reading, and a word for none',
    file: table(
      'Time (s),Power (W)',
      (row) => `${row * 10},${row === 3 ? '' : row === 7 ? 'unavailable' : watts[row]}`,
    ),
    timesS,
    watts: watts.map((watt, row) => (row === 3 || row === 7 ? Number.NaN : watt)),
  },
  {
    title: 'a row that is damaged, and one that is cut off',
    file: `${table('Time (s),Voltage (V),Current (A)', (row) => (row === 5 ? '50,13.#,x' : `${row * 10},${volts[row]},${amps[row]}`))}300,12.9`,
    timesS: timesS.filter((_, row) => row !== 5),
    volts: volts.filter((_, row) => row !== 5),
    amps: amps.filter((_, row) => row !== 5),
    notices: ['rows.malformed', 'rows.cut'],
  },
];

function clockOf(seconds: number): string {
  const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  return `${two(10 + seconds / 3600)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
}

testLogs(cases);
