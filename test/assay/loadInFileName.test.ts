import { expect, test } from 'vitest';
import { loadInFileName } from '../../src/assay/loadSeen.ts';

test.each([
  ['300w.csv', 300],
  ['300W', 300],
  ['red-1.5kW.csv', 1500],
  ['1.5kW', 1500],
  ['red 1,2 kw.CSV', 1200],
  ['unit_b_450_W_evening.txt', 450],
  ['0w.csv', 0],
  ['no-load.csv', 0],
  ['red_no_load_2.csv', 0],
  ['noload.tsv', 0],
  ['idle.csv', 0],
  ['red-unloaded.csv', 0],
  ['300w-300W again.csv', 300],
])('the name %s tells %s W', (name, watts) => {
  expect(loadInFileName(name)?.watts).toBe(watts);
});

test.each([
  ['capture 0012.csv', 'no power'],
  ['120V-60Hz.csv', 'a nominal'],
  ['ps2000w.csv', 'letters before the number: a model'],
  ['300wh.csv', 'an energy'],
  ['300w2.csv', 'a digit behind'],
  ['idler.csv', 'another word'],
])('the name %s tells no load: %s', (name) => {
  expect(loadInFileName(name)).toBeNull();
});

test('a name with two powers tells neither, but where they begin', () => {
  expect(loadInFileName('red-2000w-300w.csv')).toEqual({ watts: null, at: 4 });
  expect(loadInFileName('red-no-load-to-300w.csv')).toEqual({ watts: null, at: 4 });
});
