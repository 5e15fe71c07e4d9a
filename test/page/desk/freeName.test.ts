import { expect, test } from 'vitest';
import { freeName } from '../../../src/page/desk/sitting.ts';

test.each([
  ['CH1.csv', [], 'CH1.csv'],
  ['CH1.csv', ['CH1.csv'], 'CH1 (2).csv'],
  ['CH1.csv', ['CH1.csv', 'CH1 (2).csv', 'CH1 (3).csv'], 'CH1 (4).csv'],
  ['a/b.c/CH1.tar.csv', ['a/b.c/CH1.tar.csv'], 'a/b.c/CH1.tar (2).csv'],
  ['noending', ['noending'], 'noending (2)'],
  ['.hidden', ['.hidden'], '.hidden (2)'],
  ['evening/.hidden', ['evening/.hidden'], 'evening/.hidden (2)'],
  ['evening.2/CH1', ['evening.2/CH1'], 'evening.2/CH1 (2)'],
])('freeName(%j, %j) is %j', (name, taken, free) => {
  expect(freeName(name, new Set(taken))).toBe(free);
});
