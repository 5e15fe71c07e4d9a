import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { type EnergyLogOptions, readEnergyLog } from '../../../src/energy/log/readEnergyLog.ts';
import { bytesOf, lines } from './logCase.ts';

const rows = Array.from({ length: 20 }, (_, row) => row);
const table = (head: string, row: (row: number) => string): string => lines(head, rows.map(row));

const cases: readonly (readonly [title: string, file: string, options: EnergyLogOptions, error: object])[] = [
  ['an empty file', '', {}, { problem: 'file.empty' }],
  ['a letter', 'Dear reader,\nthe unit ran for a while.\n', {}, { problem: 'rows.none' }],
  ['two rows', 'Time (s),Power (W)\n0,5\n10,6\n', {}, { problem: 'log.rows', facts: { rows: 2 } }],
  [
    'a capture of a wave',
    table('Time (s),CH1 (V)', (row) => `${(row * 2e-5).toFixed(5)},${row % 7}`),
    {},
    { problem: 'log.capture', facts: { stepS: expect.closeTo(2e-5, 12) } },
  ],
  ['watts without a clock', table('Power (W)', (row) => String(100 + row)), {}, { problem: 'log.time' }],
  [
    'numbered rows without a clock',
    table('n,Power (W)', (row) => `${row},${100 + row}`),
    {},
    { problem: 'log.time', facts: { isNumbered: true } },
  ],
  [
    'dates of which either order may be, with different seconds',
    table(
      'Date,Power (W)',
      (row) => `0${1 + Math.floor(row / 3)}/0${2 + Math.floor(row / 3)}/2026 10:0${row % 3}:00,${100 + row}`,
    ),
    {},
    { problem: 'log.time.order' },
  ],
  [
    'two powers',
    table('Time (s),Input power (W),Output power (W)', (row) => `${row * 5},${110 + row},${100 + row}`),
    {},
    {
      problem: 'log.column.choose',
      facts: { key: 'power', columns: ['Input power (W)', 'Output power (W)'] },
    },
  ],
  [
    'a column that isn’t there',
    table('Time (s),Power (W)', (row) => `${row * 5},${100 + row}`),
    { power: 'Watts' },
    { problem: 'log.column.unknown', facts: { wanted: 'Watts', columns: ['Power (W)'] } },
  ],
  [
    'a column of which there are three',
    table('Time (s),P,P,P', (row) => `${row * 5},1,2,${100 + row}`),
    { power: 'P' },
    { problem: 'log.column.choose' },
  ],
  [
    'columns without names that nothing tells apart',
    lines(rows.map((row) => `13/02/2026 10:${10 + row}:00;${(row * 37) % 11};${row % 3}`)),
    {},
    { problem: 'log.quantity', facts: { isNamed: false } },
  ],
  [
    'volts alone',
    table('Time (s),Battery (V)', (row) => `${row * 5},${13 - row / 100}`),
    {},
    { problem: 'log.quantity.half', facts: { has: 'volts' } },
  ],
  [
    'what is left in a battery, in no unit',
    lines(
      rows.map(
        (row) =>
          `${1_780_000_000 + row * 60},${row < 12 ? 'Discharging' : 'Charging'},${row < 12 ? 900_000 - row * 3000 : 864_000 + (row - 12) * 3500}`,
      ),
    ),
    {},
    { problem: 'log.unit', facts: { key: 'counter', column: 'column 3' } },
  ],
  [
    'watts in a unit that isn’t told, of a size that says nothing',
    table('Time (s),Power', (row) => `${row * 5},${41_000 + row}`),
    {},
    { problem: 'log.unit', facts: { key: 'power' } },
  ],
  [
    'volts of a mains and amperes, without watts',
    table('Time (s),Voltage (V),Current (A)', (row) => `${row * 5},120.${row % 10},2.5${row % 3}`),
    {},
    { problem: 'log.side' },
  ],
  [
    'every third row damaged',
    table('Time (s),Power (W)', (row) => (row % 3 === 1 ? '???;' : `${row * 5},${100 + row}`)),
    {},
    { problem: 'rows.malformed', place: { line: 3 } },
  ],
];

test.each(cases)('%s', (_, file, options, expected) => {
  let thrown: unknown;
  try {
    readEnergyLog(bytesOf(file), options);
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(MeasureError);
  expect(thrown).toMatchObject(expected);
});

test('what is asked for is taken, and then the log is read', () => {
  const mains = table(
    'Time (s),Voltage (V),Current (A)',
    (row) => `${row * 5},120.${row % 10},2.5${row % 3}`,
  );
  expect(readEnergyLog(bytesOf(mains), { side: 'dc' }).side).toBe('dc');
  const two = table(
    'Time (s),Input power (W),Output power (W)',
    (row) => `${row * 5},${110 + row},${100 + row}`,
  );
  expect(readEnergyLog(bytesOf(two), { power: 'output power' }).watts?.values[0]).toBe(100);
  const watts = table('Time (s),Power', (row) => `${row * 5},${41_000 + row}`);
  // 41 W in mW.
  expect(readEnergyLog(bytesOf(watts), { power: 'Power=mW' }).watts?.values[0]).toBeCloseTo(41, 12);
});
