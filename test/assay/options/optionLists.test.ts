import { Command } from 'commander';
import { expect, test } from 'vitest';
import { completeOptions } from '../../../src/assay/assayOptions.ts';
import { fields, flags, planKeys, toldBy } from '../../../src/assay/options/optionLists.ts';
import { type OptionKey, options } from '../../../src/assay/options/options.ts';
import { CAPTURE_OPTION_KEYS } from '../../../src/bench/plan/benchPlan.ts';
import { addMeasureOptions } from '../../../src/cli/measureOptions.ts';
import { allFields } from '../../../src/page/told/fields.ts';
import { nothingTold } from '../../../src/page/told/told.ts';

test('flags are those of the command, in its order', () => {
  const known = new Set(flags.map(({ words }) => words));
  const listed = addMeasureOptions(new Command()).options.filter((option) => known.has(option.flags));
  expect(listed.map((option) => [option.flags, option.description])).toEqual(
    flags.map(({ words, help }) => [words, help]),
  );
});

test('fields are those of the page', () => {
  expect(
    fields.map(({ option: _, rank: __, isRare: ___, wanted: ____, parse: _____, ...field }) => field),
  ).toEqual(allFields);
  const told = Object.keys(nothingTold).filter((key) => key !== 'instrument');
  const own = fields.filter(({ option }) => option !== 'instrument');
  expect(own.map(({ name }) => name as string).sort()).toEqual(told.sort());
});

test('keys of a plan are those that it knows', () => {
  expect(planKeys.map(({ key }) => key)).toEqual(CAPTURE_OPTION_KEYS);
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
