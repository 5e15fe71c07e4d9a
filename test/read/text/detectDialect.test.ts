import { expect, test } from 'vitest';
import { detectDialect } from '../../../src/read/text/detectDialect.ts';

test.each([
  ['commas', ['t,v', '0.5,1.25', '0.6,-3'], ',', '.'],
  ['a semicolon does not imply a decimal comma', ['t;v', '0.5;1.25', '0.6;-3.5'], ';', '.'],
  ['a semicolon with a decimal comma', ['t;v', '0,5;1,25', '0,6;-3,5'], ';', ','],
  ['tabs with a decimal comma', ['0,5\t1,25', '0,6\t-3,5'], '\t', ','],
  ['runs of blanks', ['0.5   1.25', ' 0.6  -3.5'], 'blanks', '.'],
  ['runs of blanks with a decimal comma', ['0,5   1,25', ' 0,6  -3,5'], 'blanks', ','],
  ['commas beside a header of semicolons', ['t;v;w', '0.5,1.25', '0.6,-3.5'], ',', '.'],
  ['commas and blanks together', ['0.5, 1.25', '0.6, -3.5'], ',', '.'],
  ['commas with quoted decimal commas', ['"0,5","1,25"', '"0,6","-3,5"'], ',', ','],
  ['whole numbers', ['0,128', '1,131', '2,140'], ',', '.'],
  ['one column of decimal commas', ['0,05', '-0,12', '-0,34'], ';', ','],
  [
    'tabs below sentences with numbers in them',
    ['Rate: 5000 Hz', 'Channels: 2', '0\t1.25', '1\t-3.5'],
    '\t',
    '.',
  ],
  ['a channel that is missing throughout', ['0,5;nan', '0,6;nan'], ';', ','],
  ['words among the numbers', ['0.5;on;1.25', '0.6;off;-3.5'], ';', '.'],
] as const)('detectDialect(lines): %s', (_, lines, delimiter, decimalMark) => {
  expect(detectDialect(lines)).toEqual({ delimiter, decimalMark });
});

test('detectDialect(lines) is null without a single number', () => {
  expect(detectDialect(['Dear reader,', 'no numbers here'])).toBeNull();
});
