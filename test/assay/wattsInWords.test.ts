import { expect, test } from 'vitest';
import { wattsInWords } from '../../src/assay/loadSeen.ts';

test.each([
  ['300 W', 300],
  ['300W heater', 300],
  ['heater, 300 W', 300],
  ['  1.2 kW\u00a0kettle ', 1200],
  ['0,6 kW', 600],
  ['450 watts of lamps', 450],
  ['600 W, second setting of 3', 600],
  ['no load', 0],
  ['No load (fan only)', 0],
  ['0 W', 0],
  ['250', 250],
])('%j tells %s W', (words, watts) => {
  expect(wattsInWords(words)).toBe(watts);
});

test.each([
  ['', 'nothing'],
  ['kettle', 'no power'],
  ['no load, then 600 W resistive', 'two powers'],
  ['100 W to 600 W', 'two powers'],
  ['2 × 100 W', 'how many of a power'],
  ['2.5 A', 'a current'],
  ['300 VA', 'an apparent power'],
  ['500 Wh', 'an energy'],
  ['1,200 W', 'a comma that may set off thousands or decimals'],
  ['1.200', 'a point that may set off thousands or decimals'],
])('%j tells no power: %s', (words) => {
  expect(wattsInWords(words)).toBeNull();
});
