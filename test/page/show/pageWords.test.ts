import { expect, test } from 'vitest';
import { pageWords } from '../../../src/page/show/answerTexts.ts';

test('pageWords(text) names the field in place of the command’s option', () => {
  expect(pageWords('Give --nominal 230V/50Hz.')).toBe('Give “Nominal” 230V/50Hz.');
  expect(pageWords('the rate (--sample-rate)')).toBe('the rate (“Samples a second”)');
  expect(pageWords('an em -- dash stays')).toBe('an em -- dash stays');
  expect(pageWords('set --orders to 40')).toBe('set --orders of the command line to 40');
});
