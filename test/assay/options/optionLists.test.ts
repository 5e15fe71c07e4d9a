import { expect, test } from 'vitest';
import { completeOptions } from '../../../src/assay/assayOptions.ts';
import { fields, flagName, flags, planKeys, toldBy } from '../../../src/assay/options/optionLists.ts';
import { type OptionKey, options } from '../../../src/assay/options/options.ts';

test.each([
  ['flags', flags.map((one) => one.rank)],
  ['fields', fields.map((one) => one.rank)],
])('every one of the %s has a place of its own', (_, ranks) => {
  expect(new Set(ranks).size).toBe(ranks.length);
});

test('no two flags, fields or keys of a plan have one name', () => {
  for (const names of [
    flags.map(flagName),
    flags.map(({ name }) => name),
    fields.map(({ name }) => name as string),
    planKeys.map(({ key }) => key),
  ])
    expect(new Set(names).size).toBe(names.length);
});

test('each option is told through a flag; a key of a plan is a flag of bench too', () => {
  expect(new Set(flags.map(({ option }) => option))).toEqual(new Set(Object.keys(options)));
  expect(planKeys.map(({ flag }) => flagName(flag))).toEqual(planKeys.map(({ key }) => `--${key}`));
});

test('a sheet carries options in the order of the catalogue, those with a value of their own first', () => {
  const all = Object.fromEntries((Object.keys(options) as OptionKey[]).map((key) => [key, 'told']));
  expect(Object.keys(completeOptions(all))).toEqual(Object.keys(options));
  const otherwise = Object.entries(options).flatMap(([key, option]) =>
    option.otherwise === undefined ? [] : [[key, option.otherwise]],
  );
  expect(JSON.stringify(completeOptions({}))).toBe(JSON.stringify(Object.fromEntries(otherwise)));
});

test('a meter is told in two parts, and not by the second alone', () => {
  expect(toldBy('flag', { meterV: 120, meterDc: true }).meter).toEqual({ readingV: 120, dcCoupled: true });
  expect(toldBy('field', { meterV: 120 }).meter).toEqual({ readingV: 120, dcCoupled: false });
  expect(toldBy('flag', { meterDc: true }).meter).toBeUndefined();
});
