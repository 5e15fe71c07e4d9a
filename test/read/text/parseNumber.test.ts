import { expect, test } from 'vitest';
import { isMissingMark, parseNumber } from '../../../src/read/text/parseNumber.ts';

test('parseNumber(cell, mark) reads signs, zeros in front, exponents and padding', () => {
  expect(parseNumber('-00.0493', '.')).toBe(-0.0493);
  expect(parseNumber('  +130.2E-06 ', '.')).toBe(0.0001302);
  expect(parseNumber('1.5E+003', '.')).toBe(1500);
  expect(parseNumber('- 12.5', '.')).toBe(-12.5);
  expect(parseNumber('\u22123', '.')).toBe(-3);
  expect(parseNumber('.5', '.')).toBe(0.5);
  expect(parseNumber('5.', '.')).toBe(5);
  expect(parseNumber('-250,33435225', ',')).toBe(-250.33435225);
});

test('parseNumber(cell, mark) is null for what is no decimal number', () => {
  for (const cell of [
    '',
    ' ',
    'nan',
    'Infinity',
    '0x10',
    '1e',
    'e5',
    '1.2.3',
    '1,5',
    '12 V',
    '1e999',
    '9.91E+37',
    '-9.9e37',
    '2024-01-05',
  ]) {
    expect(parseNumber(cell, '.'), cell).toBeNull();
  }
  expect(parseNumber('1.5', ',')).toBeNull();
  expect(parseNumber('1,5,6', ',')).toBeNull();
});

test('isMissingMark(cell) knows the marks of missing values from numbers and words', () => {
  for (const cell of [
    '',
    'nan',
    '-NaN',
    '+inf',
    '-Infinity',
    '****',
    '12.5*',
    'N/A',
    '1.#QNAN',
    '--',
    'OL',
    '9.91E+37',
    '+9,910000e37',
    '-9.9000E+37',
  ]) {
    expect(isMissingMark(cell), cell).toBe(true);
  }
  for (const cell of ['0', '-1.5', 'Volt', 'info', 'x', '9.9E3', '1e29'])
    expect(isMissingMark(cell), cell).toBe(false);
});
