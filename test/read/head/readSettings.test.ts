import { expect, test } from 'vitest';
import { readSettings, settingValue } from '../../../src/read/head/settings.ts';

const read = (...cells: string[]): [string, ...string[]][] =>
  readSettings({ line: 1, text: '', cells }).map(({ key, values }) => [key, ...values]);

test('readSettings(line) reads keys in cells of their own and keys with their value', () => {
  expect(read('Sample Interval', '2e-4', 's')).toEqual([['sample interval', '2e-4', 's']]);
  expect(read('Sample Rate:', '5000')).toEqual([['sample rate', '5000']]);
  expect(read('Sample rate: 5 kSa/s')).toEqual([['sample rate', '5 kSa/s']]);
  expect(read('#SampleRate=5000')).toEqual([['sample rate', '5000']]);
  expect(read('Sample interval 2e-4 s')).toEqual([['sample interval', '2e-4 s']]);
  expect(read('a free remark')).toEqual([]);
});

test('readSettings(line) parts settings at empty cells, and joins a key to the number after one', () => {
  expect(read('Source', 'CH1', '', '', '', 'Source', 'CH2')).toEqual([
    ['source', 'CH1'],
    ['source', 'CH2'],
  ]);
  expect(read('Increment', '', '2e-4')).toEqual([['increment', '2e-4']]);
});

test('settingValue(setting) finds the unit in the value, behind it, or in the brackets of the key', () => {
  const [inValue] = readSettings({ line: 1, text: '', cells: ['rate', '1.00MSa/s'] });
  const [behind] = readSettings({ line: 1, text: '', cells: ['interval', '4', 'us'] });
  const [inKey] = readSettings({ line: 1, text: '', cells: ['interval (ms)', '0,2'] });
  expect(settingValue(inValue!)).toMatchObject({ value: 1, unit: { dimension: 'rate', factor: 1e6 } });
  expect(settingValue(behind!)).toMatchObject({ value: 4, unit: { dimension: 'time', factor: 1e-6 } });
  expect(settingValue(inKey!)).toMatchObject({ value: 0.2, unit: { dimension: 'time', factor: 1e-3 } });
});

test('settingValue(setting) is null for dates and words', () => {
  for (const value of ['2024-05-03 10:00:00', '18-May-24', 'CH1', '']) {
    expect(
      settingValue({ key: 'start', keyUnit: null, values: [value], line: 1, column: 0 }),
      value,
    ).toBeNull();
  }
});
